package standstill.disguise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lines have the wording of the kernel (drivers/usb/core/hub.c, drivers/net), systemd, udev and
 * initramfs-tools; names and numbers in them are invented.
 */
class DisguiseTest {
  private static String alone(String line) {
    return Disguise.of(List.of(line)).apply(line);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "systemd[1]: Hostname set to <lantern-bench>.|systemd[1]: Hostname set to <host-1>.",
        "lantern login: maria|host-1 login: user-1",
        "Nov 25 10:00:01 lantern kernel: usb 1-4: new device|Nov 25 10:00:01 host-1 kernel: usb 1-4: new device",
        "e1000e 0000:00:1f.6 eth0: (PCI Express:2.5GT/s:Width x1) 3c:97:0e:12:34:56|e1000e 0000:00:1f.6 eth0: (PCI Express:2.5GT/s:Width x1) 00:00:5e:00:53:01",
        "r8152 2-1:1.0 enx3c970e123456: renamed from eth0|r8152 2-1:1.0 enx00005e005301: renamed from eth0",
        "usb 1-4: SerialNumber: 4C530001230607117464|usb 1-4: SerialNumber: serial-1",
        "usb 1-4: New USB device strings: Mfr=1, Product=2, SerialNumber=3|usb 1-4: New USB device strings: Mfr=1, Product=2, SerialNumber=3",
        "ALERT!  UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d does not exist.  Dropping to a shell!|ALERT!  UUID=00000000-0000-4000-8000-000000000001 does not exist.  Dropping to a shell!",
        "Command line: root=PARTUUID=a1b2c3d4-02 ro quiet|Command line: root=PARTUUID=00000001-02 ro quiet",
        "Command line: root=LABEL=mariasdisk ro|Command line: root=LABEL=volume1 ro",
        "Timed out waiting for device /dev/disk/by-uuid/9F2C-11AB.|Timed out waiting for device /dev/disk/by-uuid/0000-0001.",
        "/dev/disk/by-id/ata-MODEL_X_500GB_S2R5NX0H123456-part2: clean|/dev/disk/by-id/ata-disk-1-part2: clean",
        "IP-Config: eth0 guessed broadcast address 192.168.7.255|IP-Config: eth0 guessed broadcast address 192.0.2.1",
        "nfs: server 10.1.2.3 not responding, still trying|nfs: server 192.0.2.1 not responding, still trying",
        "scsi 0:0:0:0: wwn-0x50014ee2b1234567|scsi 0:0:0:0: wwn-0x0000000000000001",
        "systemd-logind[700]: New session 1 of user maria.|systemd-logind[700]: New session 1 of user user-1.",
        "eth0: link-local fe80::3e97:eff:fe12:3456 ready|eth0: link-local 2001:db8::1 ready",
        "wlan0: Trying to associate with SSID 'Attic'|wlan0: Trying to associate with SSID 'network-1'",
        "wlan0: SME: Trying (SSID='Attic' freq=2412 MHz)|wlan0: SME: Trying (SSID='network-1' freq=2412 MHz)",
        "iscsistart: target iqn.2024-05.org.attic:bench.root at 10.1.2.3|iscsistart: target iqn.2001-01.example:target-1 at 192.0.2.1",
      })
  void identifiersAreReplaced(String line, String shown) {
    assertEquals(shown, alone(line));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[    0.000000] Linux version 6.1.0-13-amd64 (debian-kernel@lists.debian.org)",
        "pci 0000:00:1f.2: [8086:a102] type 00 class 0x010601",
        "RIP: 0010:native_queued_spin_lock_slowpath+0x5a/0x1d0",
        "RAX: ffffffff81e00a60 RBX: 0000000000000000 CR2: 0x00007f1234567890",
        "BIOS-e820: [mem 0x0000000000000000-0x000000000009fbff] usable",
        "12:34:56 up 3 min, load average: 0.10, 0.20, 0.30",
        "ntp: listening on 127.0.0.1 and 0.0.0.0",
        "usb 1-4: device descriptor read/64, error -71",
        "VFS: Unable to mount root fs on unknown-block(0,0)",
      })
  void whatNamesNobodyStays(String line) {
    assertEquals(line, alone(line));
  }

  @Test
  void theSameValueGetsTheSameStandInInEveryForm() {
    List<String> lines =
        List.of(
            "Command line: root=UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d",
            "systemd[1]: dev-disk-by\\x2duuid-0b6e1f0a\\x2d77aa\\x2d4b55\\x2d9a3e\\x2d3c9d8a1b2c3d.device: Job timed out.",
            "other is 11111111-77aa-4b55-9a3e-3c9d8a1b2c3d");
    List<String> shown = Disguise.of(lines).apply(lines);
    assertEquals("Command line: root=UUID=00000000-0000-4000-8000-000000000001", shown.get(0));
    assertEquals(
        "systemd[1]: dev-disk-by\\x2duuid-00000000\\x2d0000\\x2d4000\\x2d8000\\x2d000000000001.device: Job timed out.",
        shown.get(1));
    assertEquals("other is 00000000-0000-4000-8000-000000000002", shown.get(2));
  }

  @Test
  void aNameSaidOnceIsReplacedEverywhere() {
    List<String> lines =
        List.of(
            "ALERT!  /dev/mapper/lantern--vg-root does not exist.  Dropping to a shell!",
            "systemd[1]: Hostname set to <lantern>.",
            "lantern.street.example: the answer of lantern",
            "a lanternlike thing stays");
    List<String> shown = Disguise.of(lines).apply(lines);
    assertEquals(
        "ALERT!  /dev/mapper/volume1--vg-root does not exist.  Dropping to a shell!", shown.get(0));
    assertFalse(shown.get(2).contains("answer of lantern"), shown.get(2));
    assertEquals("a lanternlike thing stays", shown.get(3));
  }

  @Test
  void disguisingTwiceChangesNothingMore() {
    List<String> lines =
        List.of(
            "Hostname set to <lantern>.",
            "root=UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d 10.1.2.3 3c:97:0e:12:34:56 fe80::3e97:eff:fe12:3456");
    List<String> once = Disguise.of(lines).apply(lines);
    assertEquals(once.get(1), Disguise.of(once).apply(once.get(1)));
  }
}
