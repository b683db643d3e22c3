package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.decode.Readings.alone;
import static standstill.decode.Readings.inLine;
import static standstill.decode.Readings.none;
import static standstill.decode.Readings.says;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codes that kernels print about themselves. */
class KernelCodesTest {
  /**
   * RFC 5424 section 6.2.1, tables 1 and 2 (&lt;165&gt; is its own example), Linux 6.1
   * include/linux/kern_levels.h; &lt;30&gt; is the example of Documentation/ABI/testing/dev-kmsg.
   */
  @ParameterizedTest
  @CsvSource({
    "<0>, kern.emerg",
    "<3>, kern.err",
    "<6>, kern.info",
    "<30>, 'daemon.info: facility 3, level 6'",
    "<165>, 'local4.notice: facility 20, level 5'",
    "<191>, local7.debug",
    "<13>, user.notice",
  })
  void priorities(String code, String expected) {
    says(expected, alone(Kind.KERNEL_LEVEL, code));
    says(expected, inLine(Kind.KERNEL_LEVEL, code + "text of the message"));
  }

  /** Both lines are examples of Linux 6.1 Documentation/ABI/testing/dev-kmsg. */
  @Test
  void recordsOfTheKernelsDevice() {
    String first = inLine(Kind.KERNEL_LEVEL, "6,339,5140900,-;NET: Registered protocol family 10");
    says("level 6", first);
    says("record 339", first);
    says("5.140900 s", first);
    says(
        "daemon.info",
        inLine(Kind.KERNEL_LEVEL, "30,340,5690716,-;udevd[80]: starting version 181"));
    says(
        "0.424069 s", inLine(Kind.KERNEL_LEVEL, "7,160,424069,-;pci_root PNP0A03:00: host bridge"));
  }

  /** Linux 6.1 kernel/printk/printk.c: levels below the console's level are shown. */
  @Test
  void consoleLevel() {
    says("levels 0 to 3 only", inLine(Kind.KERNEL_LEVEL, "Kernel command line: ro loglevel=4"));
  }

  /**
   * Linux 6.1 Documentation/admin-guide/tainted-kernels.rst (4609 is its example), kernel/panic.c.
   */
  @ParameterizedTest
  @CsvSource({
    "4609, '`P        W  O`'",
    "1, proprietary",
    "512, '`G        W`'",
    "640, '`G      D W`'",
    "12289, '`P           OE`'",
    "16384, soft lockup",
    "16, machine check",
    "256, ACPI table",
    "262144, test inside the kernel",
  })
  void taintNumbers(String code, String expected) {
    // The document's example for 1 calls the module proprietary; ours has a proprietary licence.
    says(expected, alone(Kind.TAINT, code));
  }

  @ParameterizedTest
  @CsvSource({
    "'P        W  O', 4609",
    "'G        W', 512",
    "'G      D W', 640",
    "'P           OE', 12289",
  })
  void taintLetters(String letters, String number) {
    says("taint " + number, alone(Kind.TAINT, letters));
    says(
        "taint " + number,
        inLine(
            Kind.TAINT,
            "CPU: 0 PID: 1 Comm: swapper/0 Tainted: " + letters + "      6.1.0-18-amd64 #1"));
    says("no taint", inLine(Kind.TAINT, "CPU: 1 PID: 1 Comm: init Not tainted 6.1.0-18-amd64 #1"));
  }

  /** Linux 6.1 arch/x86/include/asm/trap_pf.h and arch/x86/mm/fault.c. */
  @ParameterizedTest
  @CsvSource({
    "0x0000, 'supervisor read access, not-present page'",
    "0x0002, 'supervisor write access, not-present page'",
    "0x0003, 'supervisor write access, permissions violation'",
    "0x0004, 'user read access, not-present page'",
    "0x0006, 'user write access, not-present page'",
    "0x0007, 'user write access, permissions violation'",
    "0x0009, 'supervisor read access, reserved bit violation'",
    "0x0010, 'supervisor instruction fetch, not-present page'",
    "0x0011, 'supervisor instruction fetch, permissions violation'",
    "0x0025, 'user read access, protection keys violation'",
  })
  void pageFaults(String code, String expected) {
    says(expected, alone(Kind.PAGE_FAULT, code));
    says(expected, inLine(Kind.PAGE_FAULT, "#PF: error_code(" + code + ") - x"));
    says(expected, inLine(Kind.PAGE_FAULT, "Oops: " + code.substring(2) + " [#1] PREEMPT SMP"));
  }

  @Test
  void theOopsIsCounted() {
    says("the first oops", inLine(Kind.PAGE_FAULT, "Oops: 0002 [#1] SMP"));
    says("number 2", inLine(Kind.PAGE_FAULT, "Oops: 0002 [#2] SMP"));
  }

  @Test
  void aCrashedProgramsErrorIsNoErrorNumber() {
    String line = "init[1]: segfault at 0 ip 00007f2b sp 00007ffd error 4 in libc.so.6[7f2b+1000]";
    says("user read access, not-present page", inLine(Kind.PAGE_FAULT, line));
    assertTrue(none(Kind.ERRNO_LINUX, Decoder.explain(line)));
  }

  /** Linux 6.1 arch/x86/include/asm/trapnr.h. */
  @ParameterizedTest
  @CsvSource({
    "13, 'general protection fault (#GP'",
    "14, 'page fault (#PF'",
    "8, 'double fault (#DF'",
    "18, 'machine check (#MC'",
  })
  void vectors(String code, String expected) {
    says(expected, alone(Kind.EXCEPTION, code));
  }

  /** FreeBSD sys/x86/include/trap.h: its own numbers. */
  @ParameterizedTest
  @CsvSource({
    "12, 'page fault (#PF, vector 14)'",
    "9, 'general protection fault (#GP, vector 13)'",
    "28, 'machine check (#MC, vector 18)'",
    "23, 'double fault (#DF, vector 8)'",
    "19, 'non-maskable interrupt (#NMI, vector 2)'",
  })
  void trapsOfFreeBsd(String number, String expected) {
    says(expected, inLine(Kind.EXCEPTION, "Fatal trap " + number + ": x while in kernel mode"));
  }

  /** Darwin osfmk/i386/trap.h and trap.c: vectors, in an older and a newer wording. */
  @Test
  void trapsOfDarwin() {
    says(
        "page fault (#PF",
        inLine(
            Kind.EXCEPTION, "Kernel trap at 0xffffff8000a2b3c4, type 14=page fault, registers:"));
    says(
        "page fault (#PF",
        inLine(
            Kind.EXCEPTION, "Kernel trap at 0xffffff8000a2b3c4, type = 14=page fault, registers:"));
    says(
        "general protection fault (#GP",
        inLine(
            Kind.EXCEPTION,
            "Kernel trap at 0xffffff8000a2b3c4, type 13=general protection, registers:"));
  }

  /** edk2 2022.11 UefiCpuPkg: two hexadecimal digits. */
  @Test
  void exceptionsInFirmware() {
    says(
        "#GP",
        inLine(
            Kind.EXCEPTION,
            "!!!! X64 Exception Type - 0D(#GP - General Protection)  CPU Apic ID - 00000000 !!!!"));
    says(
        "#PF",
        inLine(
            Kind.EXCEPTION,
            "!!!! X64 Exception Type - 0E(#PF - Page-Fault)  CPU Apic ID - 00000000 !!!!"));
  }

  /** Linux 6.1 kernel/exit.c (the line); POSIX wait() and tools/include/nolibc (the layout). */
  @ParameterizedTest
  @CsvSource({
    "0x00000000, exit code 0",
    "0x00000100, exit code 1",
    "0x00000200, exit code 2",
    "0x00007f00, exit code 127",
    "0x0000ff00, exit code 255",
    "0x00000009, 'signal 9, SIGKILL'",
    "0x0000000b, 'signal 11, SIGSEGV'",
    "0x0000008b, memory dump",
    "0x00000004, SIGILL",
    "0x00000007, SIGBUS",
  })
  void waitStatus(String code, String expected) {
    says(expected, alone(Kind.WAIT_STATUS, code));
    says(
        expected,
        inLine(
            Kind.WAIT_STATUS,
            "Kernel panic - not syncing: Attempted to kill init! exitcode=" + code));
  }

  /**
   * Linux 6.1 Documentation/admin-guide/devices.txt and init/do_mounts.c; (71,255) is arithmetic.
   */
  @ParameterizedTest
  @CsvSource({
    "'0,0', no device at all",
    "'8,1', disk sda1",
    "'8,0', disk sda (",
    "'8,17', sdb1",
    "'8,33', sdc1",
    "'8,240', disk sdp (",
    "'65,0', disk sdq (",
    "'65,1', sdq1",
    "'65,240', disk sdaf (",
    "'66,0', disk sdag (",
    "'71,255', sddx15",
    "'3,1', hda1",
    "'3,65', hdb1",
    "'22,1', hdc1",
    "'179,1', mmcblk0p1",
    "'179,9', mmcblk1p1",
    "'1,0', ram0",
    "'9,0', md0",
    "'7,0', loop0",
    "'11,0', sr0",
    "'2,0', fd0",
    "'259,0', does not name it",
  })
  void deviceNumbers(String code, String expected) {
    says(expected, alone(Kind.DEVICE_NUMBER, code));
    says(
        expected,
        inLine(Kind.DEVICE_NUMBER, "VFS: Unable to mount root fs on unknown-block(" + code + ")"));
  }
}
