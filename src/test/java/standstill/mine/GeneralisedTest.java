package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import standstill.store.BaseFolder;

class GeneralisedTest {
  /** Lines as the kernel, init and loaders print them; expected patterns written by hand. */
  private static final List<List<String>> LINES =
      List.of(
          List.of(
              "lantern-dock 0000:03:00.0: dock did not answer within 5 s, giving up",
              "lantern-dock (?P<address>[0-9a-f:.]+): dock did not answer within (?P<seconds>\\d+) s, giving up"),
          List.of(
              "usb 1-4.2: device descriptor read/64, error -110",
              "usb (?P<port>\\d+-\\d[\\w.:-]*): device descriptor read/(?P<n>\\d+), error -110"),
          List.of(
              "EXT4-fs (sda1): bad geometry: block count 1310720 exceeds size of device (1310464 blocks)",
              "EXT4-fs \\((?P<dev>[\\w-]+)\\): bad geometry: block count (?P<n>\\d+) exceeds size of device \\((?P<n2>\\d+) blocks\\)"),
          List.of(
              "I/O error, dev nvme0n1, sector 2048 op 0x0:(READ) flags 0x80700 phys_seg 1 prio class 2",
              "I/O error, dev (?P<dev>[\\w-]+), sector (?P<sector>\\d+) op (?P<n>0x[0-9a-fA-F]+):\\(READ\\) flags (?P<n2>0x[0-9a-fA-F]+) phys_seg (?P<n3>\\d+) prio class (?P<n4>\\d+)"),
          List.of(
              "ata1.00: qc timeout after 10000 msecs (cmd 0x27)",
              "(?P<port>ata[\\d.]+): qc timeout after (?P<n>\\d+) msecs \\(cmd (?P<n2>0x[0-9a-fA-F]+)\\)"),
          List.of(
              "ALERT!  UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d does not exist.  Dropping to a shell!",
              "ALERT!\\s+UUID=(?P<id>\\S+) does not exist\\.\\s+Dropping to a shell!"),
          List.of("mount: LABEL=lantern not found", "mount: LABEL=(?P<label>\\S+) not found"),
          List.of("[FAILED] Failed to mount /srv/bench.", "Failed to mount (?P<path>\\S+)\\."),
          List.of(
              "dev-disk-by\\x2duuid-0b6e1f0a.device: Job dev-disk-by\\x2duuid-0b6e1f0a.device/start timed out.",
              "(?P<unit>\\S+): Job (?P<unit2>\\S+)/start timed out\\."),
          List.of(
              "error: file `/boot/vmlinuz-6.1.0-18-amd64' not found.",
              "error: file `(?P<path>[^\\s']+)' not found\\."),
          List.of(
              "modprobe: can't load module raid1 (kernel/drivers/md/raid1.ko.xz): invalid module format",
              "modprobe: can't load module raid1 \\((?P<file>[^\\s\\)]+)\\): invalid module format"),
          List.of(
              "mmcblk0p1: p1 size 61067264 extends beyond EOD, truncated",
              "(?P<dev>[\\w-]+): p1 size (?P<size>\\d+) extends beyond EOD, truncated"),
          List.of(
              "r8169 0000:02:00.0 eth0: RTL8168g/8111g, 00:11:22:33:44:55, XID 4c0, IRQ 28",
              "r8169 (?P<address>[0-9a-f:.]+) (?P<if>\\w+): RTL8168g/8111g, (?P<mac>[0-9a-fA-F:-]{17}), XID 4c0, IRQ (?P<irq>\\d+)"),
          List.of(
              "sd 2:0:0:0: [sdb] tag#3 FAILED Result: hostbyte=DID_OK",
              "sd (?P<address>\\d+:\\d+:\\d+:\\d+): \\[(?P<dev>[\\w-]+)\\] tag#(?P<tag>\\d+) FAILED Result: hostbyte=DID_OK"),
          List.of(
              "lantern.service: Main process exited, code=exited, status=203/EXEC",
              "(?P<unit>\\S+): Main process exited, code=exited, status=203/EXEC"),
          List.of(
              "lantern.service: Failed with result 'timeout'.",
              "(?P<unit>\\S+): Failed with result 'timeout'\\."),
          List.of(
              "Kernel panic - not syncing: Attempted to kill init! exitcode=0x00007f00",
              "Kernel panic - not syncing: Attempted to kill init! exitcode=0x00007f00"),
          List.of(
              "ACPI BIOS Error (bug): Could not resolve symbol [\\_SB.PCI0.SAT0], AE_NOT_FOUND",
              "ACPI BIOS Error \\(bug\\): Could not resolve symbol \\[(?P<object>\\\\[\\w.^]+)\\], AE_NOT_FOUND"),
          List.of(
              "Volume group \"bench-vg\" not found",
              "Volume group \"(?P<name>[^\\s\"]+)\" not found"),
          List.of("Configuring 'Lantern bench' failed", "Configuring '(?P<name>[^']+)' failed"),
          List.of(
              "nfs: server 192.0.2.7 not responding, still trying",
              "nfs: server (?P<host>[\\d.]+) not responding, still trying"),
          List.of(
              "error while loading shared libraries: libc.so.6: cannot open shared object file",
              "error while loading shared libraries: (?P<file>[^\\s:]+): cannot open shared object file"),
          List.of(
              "watchdog: BUG: soft lockup - CPU#3 stuck for 26s! [lantern:212]",
              "watchdog: BUG: soft lockup - CPU#(?P<cpu>\\d+) stuck for (?P<seconds>\\d+)s! \\[lantern:(?P<n>\\d+)\\]"),
          List.of(
              "error: no such device: 4A1B-2C3D.",
              "error: no such device: (?P<id>[0-9A-F-]{9})\\."),
          List.of(
              "pci 0000:02:00.0: retraining downstream link at 2.5GT/s",
              "pci (?P<address>[0-9a-f:.]+): retraining downstream link at (?P<n>[\\d.]+)GT/s"),
          List.of(
              "i915 lost its 8139too and ext4 on x86_64; IPv6 is fine",
              "i915 lost its 8139too and ext4 on x86_64; IPv6 is fine"));

  @TestFactory
  List<DynamicTest> whatVariesBecomesGroupsAndWordsStay() {
    return LINES.stream()
        .map(
            line ->
                DynamicTest.dynamicTest(
                    line.get(0),
                    () ->
                        assertEquals(line.get(1), Generalised.of(line.get(0)).pattern().source())))
        .toList();
  }

  private static String captures(String message) {
    return Generalised.of(message).captures().stream()
        .map(c -> c.name() + "=" + c.value())
        .collect(Collectors.joining(" "));
  }

  @Test
  void capturesSayWhatWasCaught() {
    assertEquals("dev=nvme0n1p2", captures("XFS (nvme0n1p2): log mount failed"));
    assertEquals("port=1-4.2:1.0", captures("usb-storage 1-4.2:1.0: USB Mass Storage detected"));
    assertEquals("dev=/dev/sda1", captures("fsck of /dev/sda1: UNEXPECTED INCONSISTENCY"));
    assertEquals("host=2001:db8::7", captures("no answer from 2001:db8::7 at all"));
  }

  @Test
  void theSameShapeOnAnotherMachineMatches() {
    Generalised one = Generalised.of("usb 1-4.2: device not accepting address 7, error -71");
    assertTrue(one.pattern().foundIn("usb 3-1: device not accepting address 112, error -71"));
    assertFalse(
        one.pattern().foundIn("usb 3-1: device not accepting address 112, error -110"),
        "another error number is another cause");
  }

  @Test
  void thePatternMatchesItsOwnLineForEveryTextOfTheBase() throws Exception {
    List<String> texts =
        BaseFolder.read(Path.of("kb")).base().faults().stream()
            .flatMap(fault -> fault.signs().stream())
            .flatMap(sign -> Stream.concat(sign.seen().stream(), sign.unlike().stream()))
            .distinct()
            .toList();
    assertTrue(texts.size() > 2_000, "only " + texts.size() + " texts were seen");
    List<String> broken =
        texts.stream().filter(text -> !Generalised.of(text).pattern().foundIn(text)).toList();
    assertEquals(List.of(), broken);
  }

  @Test
  void aLineOfNumbersAloneTellsNothing() {
    assertFalse(Generalised.of("12 0x7f 00:11:22:33:44:55").tells());
    assertTrue(Generalised.of("lantern 12").tells());
  }

  @Test
  void longLinesGiveAPatternOfTheirBeginning() {
    String message = "lantern bench " + "dock 17 (a|b) ".repeat(1_000);
    Generalised generalised = Generalised.of(message);
    assertTrue(generalised.pattern().foundIn(message));
    assertTrue(generalised.pattern().source().length() <= 2_000);
  }
}
