package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where a boot begins, which family it is of, and what is no boot log. */
class BootsTest {
  private static List<Integer> sizes(String text) {
    return TestForms.reader().read(text).boots().stream().map(b -> b.lines().size()).toList();
  }

  private static String kernel(double until) {
    return "[    0.000000] Linux version 6.1.0\n"
        + "[    0.000000] Command line: quiet\n"
        + String.format(java.util.Locale.ROOT, "[%12.6f] usb 1-1: new device%n", until);
  }

  @Test
  void firmwareLoaderAndKernelAreOneBoot() {
    String loader = "SeaBIOS (version 1.16.2)\nBooting from Hard Disk...\nWelcome to GRUB!\n";
    assertEquals(List.of(6), sizes(loader + kernel(9)));
    assertEquals(List.of(6, 6), sizes((loader + kernel(9)).repeat(2)));
  }

  @Test
  void aCrashKernelIsABootOfItsOwn() {
    assertEquals(
        List.of(4, 3),
        sizes(kernel(9) + "[    9.100000] Kernel panic - not syncing: Fatal\n" + kernel(3)));
  }

  @Test
  void aFirmwareThatStartsAgainIsASecondBoot() {
    String loop = "SeaBIOS (version 1.16.2)\nBooting from Hard Disk...\nGRUB loading.\n";
    assertEquals(List.of(3, 3, 3), sizes(loop.repeat(3)));
  }

  @Test
  void linesBeforeTheVersionBelongToTheSameKernel() {
    String start = "[    0.000000] Initializing cgroup subsys cpuset\n" + kernel(50);
    assertEquals(List.of(4, 4), sizes(start.repeat(2)));
  }

  @Test
  void separatorsOfAJournalDivide() {
    String first =
        "Nov 25 10:00:00 bench kernel: Linux version 6.1.0\nNov 25 10:00:09 bench kernel: a\n";
    String second = first.replace("25", "26");
    assertEquals(
        List.of(2, 3), sizes(first + "-- Boot 1a2b3c4d5e6f47a8b9c0d1e2f3a4b5c6 --\n" + second));
    assertEquals(List.of(2, 3), sizes(first + "-- Reboot --\n" + second));
    assertEquals(List.of(4), sizes("-- Logs begin at Mon --\n-- Reboot --\n" + first));
  }

  @Test
  void entriesOfAJournalInJsonAreRead() {
    String text =
        "{\"MESSAGE\":\"Linux version 6.1.0\",\"PRIORITY\":\"5\",\"_TRANSPORT\":\"kernel\","
            + "\"SYSLOG_IDENTIFIER\":\"kernel\",\"__MONOTONIC_TIMESTAMP\":\"4000000\","
            + "\"_SOURCE_MONOTONIC_TIMESTAMP\":\"0\",\"_BOOT_ID\":\"a\"}\n"
            + "{\"MESSAGE\":[27,91,51,49,109,104,105],\"PRIORITY\":\"3\",\"SYSLOG_IDENTIFIER\":\"systemd\","
            + "\"_PID\":\"1\",\"__MONOTONIC_TIMESTAMP\":\"5250000\",\"_BOOT_ID\":\"a\"}\n"
            + "{\"MESSAGE\":\"again\",\"__MONOTONIC_TIMESTAMP\":\"1\",\"_BOOT_ID\":\"b\"}\n";
    BootLog log = TestForms.reader().read(text);
    assertEquals(2, log.boots().size());
    LogLine second = log.boots().get(0).lines().get(1);
    assertEquals("hi", second.message());
    assertEquals("systemd", second.process());
    assertEquals(3, second.level().orElseThrow());
    assertEquals(OptionalDouble.of(5.25), second.seconds());
    assertEquals(OptionalDouble.of(0), log.boots().get(0).lines().get(0).seconds());
  }

  @Test
  void entriesInJsonMayStretchOverLines() {
    List<LogLine> lines =
        Read.lines("{\n\t\"MESSAGE\" : \"usb 1-1: x\",\n\t\"PRIORITY\" : \"6\"\n}\n[    1.0] x\n");
    assertEquals("usb 1-1: x", lines.get(0).message());
    assertEquals(4, lines.get(0).lastNumber());
  }

  @Test
  void propertiesOfAKernelRecordAreNoLines() {
    List<LogLine> lines =
        Read.lines(
            "7,160,424069,-;pci_root PNP0A03:00: host\\x3abridge\n SUBSYSTEM=acpi\n"
                + " DEVICE=+acpi:PNP0A03:00\n");
    assertEquals(1, lines.size());
    assertEquals(3, lines.get(0).lastNumber());
    assertEquals("pci_root PNP0A03:00: host:bridge", lines.get(0).message());
    assertEquals(OptionalDouble.of(0.424069), lines.get(0).seconds());
  }

  @Test
  void shortExcerptsAreRecognised() {
    for (String text :
        List.of(
            "Gave up waiting for root file system device.\nALERT!  UUID=0b6e does not exist.\n(initramfs)",
            "[FAILED] Failed to mount /home.\n[DEPEND] Dependency failed for Local File Systems.",
            "error: no such device: 0b6e.\nEntering rescue mode...\ngrub rescue>",
            "Nov 25 10:00:00 bench kernel: usb 1-1: new device",
            "Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,0)",
            "   3.123456] usb 1-1: new device",
            "Reboot and Select proper Boot device")) {
      BootLog log = TestForms.reader().read(text);
      assertEquals("linux", log.family(), text);
      assertTrue(log.isBootLog(), text);
    }
  }

  @Test
  void whatIsNoBootLogIsSaidToBeNone() {
    for (String text :
        List.of(
            "",
            "  \n\n",
            "O lantern on the corner, shine\nupon the benches in a line\n",
            "2 screwdrivers\n1 roll of tape\n12 screws M3\n",
            "public static void main(String[] args) {\n  int[] a = new int[1];\n}\n",
            "192.0.2.1 - - [25/Nov/2026:10:00:00 +0000] \"GET / HTTP/1.1\" 200 12\n",
            "java.lang.IllegalStateException: no\n\tat a.B.c(B.java:12)\n\tat a.D.e(D.java:3)\n",
            "From: a@example.org\nSubject: hello\nDate: Wed, 25 Nov 2026 10:00:00 +0000\n\nHi\n")) {
      BootLog log = TestForms.reader().read(text);
      assertFalse(log.isBootLog(), text);
      assertEquals("", log.family(), text);
      assertFalse(log.reasonNotALog().endsWith("."));
    }
    byte[] bytes = new byte[20_000];
    new java.util.Random(7).nextBytes(bytes);
    assertFalse(TestForms.reader().read(bytes).isBootLog());
  }

  @Test
  void theLastBootsOfVeryManyAreKeptAndTheReportSaysSo() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 700; i++) {
      text.append("[    0.000000] Linux version 6.1.").append(i).append("\n[    9.000000] usb\n");
    }
    BootLog log = TestForms.reader().read(text.toString());
    assertEquals(500, log.boots().size());
    assertEquals(1, log.boots().get(0).number());
    assertEquals(401, log.boots().get(0).lines().get(0).number());
    assertEquals(
        List.of(
            "The text holds 700 starts of the machine; the last 500 were kept and are counted from 1."),
        log.limits());
    String few = text.substring(0, text.indexOf("6.1.3"));
    assertEquals(List.of(), TestForms.reader().read(few).limits());
  }
}
