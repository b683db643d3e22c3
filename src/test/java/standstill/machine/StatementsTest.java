package standstill.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.machine.Machines.AHCI;
import static standstill.machine.Machines.GAVE_UP;
import static standstill.machine.Machines.NVME;
import static standstill.machine.Machines.RAMDISK;
import static standstill.machine.Machines.SATA;
import static standstill.machine.Machines.SDA;
import static standstill.machine.Machines.SDA_PARTS;
import static standstill.machine.Machines.START;
import static standstill.machine.Machines.UP;
import static standstill.machine.Machines.lines;
import static standstill.machine.Machines.values;
import static standstill.machine.Machines.verdict;
import static standstill.machine.Said.Verdict.ABSENT;
import static standstill.machine.Said.Verdict.NOT_COVERED;
import static standstill.machine.Said.Verdict.SEEN;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import standstill.base.Statement;

/** Every statement: where it holds, where it doesn't, and where the paste doesn't tell. */
class StatementsTest {
  private static final String LINK_DOWN =
      "[   12.000000] ata1: SATA link down (SStatus 0 SControl 300)\n";
  private static final String USB_DISK =
      """
      [    9.000000] usb 2-1: New USB device found, idVendor=46f4, idProduct=0001, bcdDevice= 0.00
      [    9.100000] usb 2-1: Product: USB Flash Disk
      """;
  private static final String USB_DISK_UP =
      """
      [   40.000000] usb-storage 2-1:1.0: USB Mass Storage device detected
      [   40.100000] scsi host6: usb-storage 2-1:1.0
      [   41.000000] sd 6:0:0:0: [sdb] 41943040 512-byte logical blocks: (21.5 GB/20.0 GiB)
      """;

  @ParameterizedTest
  @EnumSource(Statement.class)
  void everyStatementHasAReadingAndSaysNothingOfAnEmptyBoot(Statement statement) {
    Said said = Machines.of("(initramfs) \n").says(statement);
    assertFalse(said.holds(), statement.word());
    assertEquals(statement, Statement.of(statement.word()).orElseThrow());
  }

  @Test
  void everyStatementIsListedInTheReference() throws java.io.IOException {
    String text = java.nio.file.Files.readString(Path.of("docs/reference/base-format.md"));
    for (Statement statement : Statement.values()) {
      String row = "| `" + statement.word() + "` | " + statement.title() + " |";
      assertTrue(text.contains(row), row);
      statement.groups().forEach(g -> assertTrue(text.contains("`" + g + "`"), g));
    }
  }

  @Test
  void controllersAreToldApartByTheirClass() {
    String scsi = "[    1.302823] pci 0000:00:03.0: [1000:0012] type 00 class 0x010000\n";
    String raid = "[    1.302823] pci 0000:00:03.0: [1000:005d] type 00 class 0x010400\n";
    String virtio = "[    1.302823] pci 0000:00:03.0: [1af4:1001] type 00 class 0x010000\n";
    Statement sata = Statement.SATA_CONTROLLER_WITHOUT_DRIVER;
    assertEquals(SEEN, verdict(sata, START, SATA, RAMDISK, GAVE_UP));
    assertEquals(ABSENT, verdict(sata, START, scsi, RAMDISK, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(sata, START, SATA, RAMDISK));
    assertEquals(
        SEEN, verdict(Statement.SCSI_CONTROLLER_WITHOUT_DRIVER, START, scsi, RAMDISK, GAVE_UP));
    assertEquals(
        ABSENT, verdict(Statement.SCSI_CONTROLLER_WITHOUT_DRIVER, START, virtio, RAMDISK, GAVE_UP));
    assertEquals(
        SEEN, verdict(Statement.RAID_CONTROLLER_WITHOUT_DRIVER, START, raid, RAMDISK, GAVE_UP));
    assertEquals(
        ABSENT, verdict(Statement.RAID_CONTROLLER_WITHOUT_DRIVER, START, scsi, RAMDISK, GAVE_UP));
  }

  @Test
  void storageControllerWithoutDriver() {
    Statement asked = Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER;
    assertEquals(
        List.of(
            Map.of(
                "device", "0000:00:1f.2",
                "id", "8086:2922",
                "class", "SATA controller",
                "model", "")),
        values(asked, START, SATA, RAMDISK, GAVE_UP));
    assertEquals(List.of(4), lines(asked, START, SATA, RAMDISK, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, LINK_DOWN, GAVE_UP));
    // Drivers come after the ramdisk has begun: one that has not given up may still load it.
    assertEquals(NOT_COVERED, verdict(asked, START, SATA, RAMDISK));
    assertEquals(NOT_COVERED, verdict(asked, SATA, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, GAVE_UP));
  }

  @Test
  void aDriverThatTellsOnlyItsHostHasTakenTheController() {
    String scsi = "[    1.302823] pci 0000:00:03.0: [1000:0012] type 00 class 0x010000\n";
    String host = "[   10.000000] scsi host0: sym-2.2.3\n";
    Statement asked = Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER;
    assertEquals(ABSENT, verdict(asked, START, scsi, RAMDISK, host, GAVE_UP));
    // A host of a driver that belongs to another class of controllers says nothing of this one.
    assertEquals(SEEN, verdict(asked, START, scsi, SATA, RAMDISK, AHCI, LINK_DOWN, GAVE_UP));
  }

  @Test
  void aDriverThatTriedAndFailedIsADriver() {
    String failed = "[   10.000000] ahci: probe of 0000:00:1f.2 failed with error -12\n";
    assertEquals(
        ABSENT,
        verdict(
            Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER, START, SATA, RAMDISK, failed, GAVE_UP));
  }

  @Test
  void nvmeControllerWithoutDriver() {
    Statement asked = Statement.NVME_CONTROLLER_WITHOUT_DRIVER;
    assertEquals(SEEN, verdict(asked, START, NVME, RAMDISK, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, GAVE_UP));
    String driver = "[   10.000000] nvme nvme0: pci function 0000:01:00.0\n";
    assertEquals(ABSENT, verdict(asked, START, NVME, RAMDISK, driver, GAVE_UP));
    // Drivers of old kernels print nothing but the disk.
    String disk = "[   10.000000]  nvme0n1: p1 p2\n";
    assertEquals(ABSENT, verdict(asked, START, NVME, RAMDISK, disk, GAVE_UP));
  }

  @Test
  void virtioDeviceWithoutDriver() {
    Statement asked = Statement.VIRTIO_DEVICE_WITHOUT_DRIVER;
    String device = "[    1.308351] pci 0000:00:03.0: [1af4:1001] type 00 class 0x010000\n";
    String bus = "[    9.000000] virtio-pci 0000:00:03.0: enabling device (0000 -> 0003)\n";
    String disk =
        "[   10.000000] virtio_blk virtio1: [vda] 41943040 512-byte logical blocks (21.5 GB/20.0 GiB)\n";
    assertEquals(SEEN, verdict(asked, START, device, RAMDISK, GAVE_UP));
    assertEquals(SEEN, verdict(asked, START, device, RAMDISK, bus, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, device, RAMDISK, disk, GAVE_UP));
    assertEquals(
        ABSENT,
        verdict(
            Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER, START, device, RAMDISK, disk, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, START, device, RAMDISK));
  }

  @Test
  void usbStorageWithoutDriver() {
    Statement asked = Statement.USB_STORAGE_WITHOUT_DRIVER;
    assertEquals(
        "USB Flash Disk", values(asked, START, USB_DISK, RAMDISK, GAVE_UP).get(0).get("model"));
    assertEquals(ABSENT, verdict(asked, START, USB_DISK, RAMDISK, USB_DISK_UP, GAVE_UP));
    String keyboard =
        """
        [    9.000000] usb 2-1: New USB device found, idVendor=46f4, idProduct=0002, bcdDevice= 0.00
        [    9.100000] usb 2-1: Product: USB Keyboard
        """;
    assertEquals(ABSENT, verdict(asked, START, keyboard, RAMDISK, GAVE_UP));
  }

  @Test
  void raidModeController() {
    Statement asked = Statement.RAID_MODE_CONTROLLER;
    assertEquals(
        SEEN, verdict(asked, "ahci 0000:00:17.0: Found 1 remapped NVMe devices.\n", GAVE_UP));
    assertEquals(
        SEEN,
        verdict(asked, START, "[  1.0] pci 0000:00:17.0: [8086:282a] type 00 class 0x010400\n"));
    // A RAID controller of its own is no mode of the chip set.
    assertFalse(
        Machines.of(START, "[  1.0] pci 0000:00:17.0: [1000:005d] type 00 class 0x010400\n")
            .says(asked)
            .holds());
    assertFalse(Machines.of(START, SATA, RAMDISK, AHCI).says(asked).holds());
  }

  @Test
  void graphicsDeviceWithoutDriver() {
    Statement asked = Statement.GRAPHICS_DEVICE_WITHOUT_DRIVER;
    String device = "[    1.690950] pci 0000:00:02.0: [8086:0046] type 00 class 0x030000\n";
    String driver = "[   15.0] [drm] Initialized i915 1.6.0 20201103 for 0000:00:02.0 on minor 0\n";
    assertEquals(
        "graphics device",
        values(asked, START, device, RAMDISK, AHCI, SDA, UP).get(0).get("class"));
    assertEquals(ABSENT, verdict(asked, START, device, RAMDISK, AHCI, SDA, driver, UP));
    // Few ramdisks have the driver, so its absence before the installed system says nothing.
    assertEquals(NOT_COVERED, verdict(asked, START, device, RAMDISK, GAVE_UP));
  }

  @Test
  void networkDeviceWithoutDriver() {
    Statement asked = Statement.NETWORK_DEVICE_WITHOUT_DRIVER;
    String device = "[    1.709069] pci 0000:00:02.0: [8086:10d3] type 00 class 0x020000\n";
    String driver = "[   15.0] e1000e 0000:00:02.0 enp0s2: renamed from eth0\n";
    assertEquals(SEEN, verdict(asked, START, device, RAMDISK, AHCI, SDA, UP));
    assertEquals(ABSENT, verdict(asked, START, device, RAMDISK, AHCI, SDA, driver, UP));
    assertEquals(NOT_COVERED, verdict(asked, START, device, RAMDISK, GAVE_UP));
  }

  @Test
  void noDiskAtAll() {
    Statement asked = Statement.NO_DISK_AT_ALL;
    assertEquals(
        List.of(Map.of("wanted", "UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21")),
        values(asked, START, SATA, RAMDISK, GAVE_UP));
    // The line of what was wanted, and not the one in which the stop shows itself.
    assertEquals(List.of(2), lines(asked, START, SATA, RAMDISK, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, START, SATA, RAMDISK));
    assertEquals(NOT_COVERED, verdict(asked, GAVE_UP));
  }

  @Test
  void whatTheFirmwareSawIsNoDiskOfTheKernels() {
    String firmware =
        "BdsDxe: starting Boot0001 \"UEFI LANTERN HARDDISK 1 \" from PciRoot(0x0)/Pci(0x1F,0x2)/Sata(0x0,0xFFFF,0x0)\n";
    assertEquals(SEEN, verdict(Statement.NO_DISK_AT_ALL, firmware, START, SATA, RAMDISK, GAVE_UP));
  }

  @Test
  void aDriveForDiscsIsNoDisk() {
    String optical =
        """
        [   12.0] ata1: SATA link up 1.5 Gbps (SStatus 113 SControl 300)
        [   12.1] ata1.00: ATAPI: LANTERN DVD-ROM, 2.5+, max UDMA/100
        """;
    assertEquals(
        SEEN, verdict(Statement.NO_DISK_AT_ALL, START, SATA, RAMDISK, AHCI, optical, GAVE_UP));
  }

  @Test
  void portLinkDownWhereRootShouldBe() {
    Statement asked = Statement.PORT_LINK_DOWN_WHERE_ROOT_SHOULD_BE;
    assertEquals(
        List.of(Map.of("port", "ata1")),
        values(asked, START, SATA, RAMDISK, AHCI, LINK_DOWN, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, GAVE_UP));
    // Where a controller has no driver the disk may hang on that one.
    assertEquals(NOT_COVERED, verdict(asked, START, SATA, NVME, RAMDISK, AHCI, LINK_DOWN, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, LINK_DOWN, GAVE_UP));
  }

  @Test
  void wantedIdNotAmongVolumes() {
    Statement asked = Statement.WANTED_ID_NOT_AMONG_VOLUMES;
    assertEquals(
        Map.of(
            "id", "UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21",
            "device", "UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21",
            "disk", "sda"),
        values(asked, START, SATA, RAMDISK, AHCI, SDA, SDA_PARTS, GAVE_UP).get(0));
    // Without a disk there is nothing that it could be on.
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, GAVE_UP));
    // Where a controller has no driver its disks are not known.
    assertEquals(ABSENT, verdict(asked, START, SATA, NVME, RAMDISK, AHCI, SDA, SDA_PARTS, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, SDA_PARTS, UP));
  }

  @Test
  void wantedDeviceMissingButOtherDisksPresent() {
    Statement asked = Statement.WANTED_DEVICE_MISSING_BUT_OTHER_DISKS_PRESENT;
    String start = START.replace("UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21", "/dev/sdb3");
    String alert = "ALERT!  /dev/sdb3 does not exist.  Dropping to a shell!\n(initramfs) \n";
    assertEquals(
        "sdb3",
        values(asked, start, SATA, RAMDISK, AHCI, SDA, SDA_PARTS, alert).get(0).get("device"));
    assertEquals(ABSENT, verdict(asked, start, SATA, RAMDISK, alert));
    String volume =
        START.replace("UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21", "/dev/mapper/vg0-root");
    String gone =
        "ALERT!  /dev/mapper/vg0-root does not exist.  Dropping to a shell!\n(initramfs) \n";
    assertEquals(ABSENT, verdict(asked, volume, SATA, RAMDISK, AHCI, SDA, SDA_PARTS, gone));
  }

  @Test
  void diskSeenWithoutPartitions() {
    Statement asked = Statement.DISK_SEEN_WITHOUT_PARTITIONS;
    assertEquals(
        List.of(Map.of("disk", "sda", "size", "21.5 GB")),
        values(asked, START, SATA, RAMDISK, AHCI, SDA, GAVE_UP));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, SDA_PARTS, GAVE_UP));
    String whole =
        "[   18.0] BTRFS: device fsid b7f52c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 devid 1 transid 6 /dev/sda scanned by btrfs (254)\n";
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, whole, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, START, SATA, RAMDISK, AHCI, SDA));
  }

  @Test
  void diskSeenAndGone() {
    Statement asked = Statement.DISK_SEEN_AND_GONE;
    String gone = "[   60.0] usb 2-1: USB disconnect, device number 2\n";
    assertEquals(
        List.of(Map.of("disk", "sdb")),
        values(asked, START, USB_DISK, RAMDISK, USB_DISK_UP, gone, GAVE_UP));
    assertFalse(Machines.of(START, USB_DISK, RAMDISK, USB_DISK_UP, GAVE_UP).says(asked).holds());
    assertFalse(Machines.of(START, USB_DISK, gone, USB_DISK_UP).says(asked).holds());
    assertTrue(
        Machines.of(
                START,
                SATA,
                RAMDISK,
                AHCI,
                SDA,
                "[  50.0] sd 0:0:0:0: [sda] tag#0 rejecting I/O to offline device\n")
            .says(asked)
            .holds());
  }

  @Test
  void usbDiskLate() {
    Statement asked = Statement.USB_DISK_LATE;
    assertEquals(
        "sdb", values(asked, START, USB_DISK, RAMDISK, GAVE_UP, USB_DISK_UP).get(0).get("disk"));
    assertEquals(ABSENT, verdict(asked, START, USB_DISK, RAMDISK, USB_DISK_UP, GAVE_UP));
    // A disk elsewhere is not on USB.
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, GAVE_UP, AHCI, SDA));
  }

  @Test
  void rootNotAskedFor() {
    Statement asked = Statement.ROOT_NOT_ASKED_FOR;
    String none = START.replace("root=UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 ", "");
    String panic =
        "[    2.8] Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,0)\n";
    String said = "No root device specified. Boot arguments must include a root= parameter.\n";
    assertEquals(SEEN, verdict(asked, none, SATA, RAMDISK, said));
    assertEquals(SEEN, verdict(asked, none, SATA, panic));
    assertEquals(ABSENT, verdict(asked, START, SATA, panic));
    assertEquals(ABSENT, verdict(asked, none, SATA, RAMDISK));
    assertEquals(NOT_COVERED, verdict(asked, panic));
  }

  @Test
  void ramdiskLoadedOrNot() {
    String panic =
        "[    2.8] Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,0)\n";
    assertEquals(SEEN, verdict(Statement.NO_RAMDISK_LOADED, START, SATA, panic));
    assertEquals(ABSENT, verdict(Statement.RAMDISK_LOADED, START, SATA, panic));
    assertEquals(ABSENT, verdict(Statement.NO_RAMDISK_LOADED, START, SATA, RAMDISK, GAVE_UP));
    assertEquals(SEEN, verdict(Statement.RAMDISK_LOADED, START, SATA, RAMDISK));
    // The kernel's first lines are not there, or it has not come to look for a root.
    assertEquals(NOT_COVERED, verdict(Statement.NO_RAMDISK_LOADED, panic));
    assertEquals(NOT_COVERED, verdict(Statement.NO_RAMDISK_LOADED, START, SATA));
    // What the loader read, the kernel may still not have got.
    assertEquals(
        SEEN,
        verdict(Statement.NO_RAMDISK_LOADED, "Loading initial ramdisk ...\n", START, SATA, panic));
  }

  @Test
  void arrayMemberMissing() {
    Statement asked = Statement.ARRAY_MEMBER_MISSING;
    assertEquals(
        List.of(Map.of("array", "md0")),
        values(asked, START, "[ 5.0] md/raid1:md0: active with 1 out of 2 mirrors\n"));
    assertFalse(
        Machines.of(START, "[ 5.0] md/raid1:md0: active with 2 out of 2 mirrors\n")
            .says(asked)
            .holds());
    assertTrue(
        Machines.of(
                "mdadm: /dev/md0 assembled from 1 drive - not enough to start the array.\n(initramfs) \n")
            .says(asked)
            .holds());
  }

  @Test
  void encryptedVolumeNeverOpened() {
    Statement asked = Statement.ENCRYPTED_VOLUME_NEVER_OPENED;
    String prompt = "Please unlock disk cryptroot: \n";
    assertEquals(
        List.of(Map.of("volume", "cryptroot")), values(asked, START, SATA, RAMDISK, prompt));
    String open = "cryptsetup: cryptroot: set up successfully\n";
    assertFalse(Machines.of(START, SATA, RAMDISK, prompt, open).says(asked).holds());
    assertFalse(Machines.of(START, SATA, RAMDISK, prompt, UP).says(asked).holds());
  }

  @Test
  void volumeGroupNeverFound() {
    Statement asked = Statement.VOLUME_GROUP_NEVER_FOUND;
    String missing =
        """
          Volume group "vg0" not found
          Cannot process volume group vg0
        """;
    assertEquals(List.of(Map.of("volume", "vg0")), values(asked, START, RAMDISK, missing, GAVE_UP));
    String later = "  2 logical volume(s) in volume group \"vg0\" now active\n";
    assertFalse(Machines.of(START, RAMDISK, missing, later).says(asked).holds());
  }

  @Test
  void fileSystemModuleMissing() {
    Statement asked = Statement.FILE_SYSTEM_MODULE_MISSING;
    assertEquals(
        List.of(Map.of("type", "vfat")),
        values(
            asked,
            "mount[340]: mount: /efi: unknown filesystem type 'vfat'.\nFailed to mount /efi.\n"));
    // These are no file systems: no module would help.
    assertFalse(
        Machines.of("mount: /mnt: unknown filesystem type 'LVM2_member'.\nFailed to mount /mnt.\n")
            .says(asked)
            .holds());
  }

  @Test
  void unitStartedAndNeverFinished() {
    Statement asked = Statement.UNIT_STARTED_AND_NEVER_FINISHED;
    String mounted = "[   20.000000] EXT4-fs (sda2): mounted filesystem with ordered data mode.\n";
    String begun = "         Starting lantern-scan.service - Scan the shelves...\n";
    String job = "[***   ] Job lantern-scan.service/start running (2min 31s / no limit)\n";
    assertEquals(
        List.of(Map.of("unit", "lantern-scan.service (Scan the shelves)", "waited", "2min 31s")),
        values(asked, START, mounted, begun, job));
    String done = "[  OK  ] Finished lantern-scan.service - Scan the shelves.\n";
    assertEquals(ABSENT, verdict(asked, START, mounted, begun, job, done));
    assertEquals(ABSENT, verdict(asked, START, mounted, begun, job, UP));
    String shell = "[  OK  ] Reached target emergency.target - Emergency Mode.\n";
    assertEquals(ABSENT, verdict(asked, START, mounted, begun, shell));
    // The paste may end before the next line came.
    assertEquals(ABSENT, verdict(asked, START, mounted, begun));
    assertEquals(NOT_COVERED, verdict(asked, START, mounted));
  }

  @Test
  void unitFailsAgainAndAgain() {
    Statement asked = Statement.UNIT_FAILS_AGAIN_AND_AGAIN;
    String failed = "[FAILED] Failed to start lantern.service - Lamp oil.\n";
    assertEquals(
        List.of(Map.of("unit", "lantern.service (Lamp oil)", "times", "3")),
        values(asked, START, failed, failed, failed));
    assertFalse(Machines.of(START, failed, failed).says(asked).holds());
    String done = "[  OK  ] Started lantern.service - Lamp oil.\n";
    assertFalse(Machines.of(START, failed, failed, failed, done).says(asked).holds());
  }

  @Test
  void waitedForDeviceNeverCame() {
    Statement asked = Statement.WAITED_FOR_DEVICE_NEVER_CAME;
    String timeout = "[ TIME ] Timed out waiting for device /dev/disk/by-uuid/7DA29C4A4455453E.\n";
    assertEquals(List.of(Map.of("device", "UUID=7DA29C4A4455453E")), values(asked, START, timeout));
    String late = "[  OK  ] Found device /dev/disk/by-uuid/7DA29C4A4455453E.\n";
    assertFalse(Machines.of(START, timeout, late).says(asked).holds());
  }

  @Test
  void consoleElsewhere() {
    Statement asked = Statement.CONSOLE_ELSEWHERE;
    String start = START.replace(" ro\n", " ro console=tty0 console=ttyS1,115200\n");
    String off = "[    0.5] printk: bootconsole [uart8250] disabled\n";
    assertEquals(
        List.of(Map.of("console", "ttyS1", "here", "uart8250")), values(asked, start, off));
    String loader =
        """
        GNU GRUB  version 2.06
        linux /vmlinuz root=/dev/sda2 console=ttyS1
        Loading initial ramdisk ...
        """;
    assertEquals(SEEN, verdict(asked, loader));
    assertEquals(ABSENT, verdict(asked, start, off, SATA, RAMDISK, GAVE_UP));
    assertEquals(NOT_COVERED, verdict(asked, START, off));
  }

  @Test
  void startedAgainByItself() {
    Statement asked = Statement.STARTED_AGAIN_BY_ITSELF;
    String again = "[    0.000000] Linux version 6.1.0-18-amd64 (lantern@bench) #1 SMP\n";
    String late = "[   30.000000] usb 1-1: new high-speed USB device number 2 using xhci_hcd\n";
    assertEquals(SEEN, verdict(asked, START, SATA, late, again, START));
    assertEquals(List.of(5), lines(asked, START, SATA, late, again, START));
    String told = "[   40.000000] reboot: Restarting system\n";
    assertEquals(ABSENT, verdict(asked, START, SATA, late, told, again, START));
    assertEquals(ABSENT, verdict(asked, START, SATA, late));
    assertEquals(ABSENT, verdict(asked, START, SATA, RAMDISK, AHCI, SDA, UP, again, START));
  }
}
