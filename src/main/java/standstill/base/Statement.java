package standstill.base;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a sign of the form {@code fact:} may ask of the machine. The list is closed: each has its
 * reading in the room {@code machine}, a line in {@code docs/reference/base-format.md}, and a test.
 */
public enum Statement {
  /** A controller that disks hang on is in the list of devices, and no driver has taken it. */
  STORAGE_CONTROLLER_WITHOUT_DRIVER("a storage controller has no driver", "device", "id", "class"),
  /** The same, for a controller of SATA or IDE disks. */
  SATA_CONTROLLER_WITHOUT_DRIVER("a SATA controller has no driver", "device", "id", "class"),
  /** The same, for a controller of SCSI or SAS disks; those of virtual machines are told apart. */
  SCSI_CONTROLLER_WITHOUT_DRIVER("a SCSI controller has no driver", "device", "id", "class"),
  /** The same, for a controller of the RAID class, of its own or of the chip set. */
  RAID_CONTROLLER_WITHOUT_DRIVER("a RAID controller has no driver", "device", "id", "class"),
  /** The same, for a controller of NVMe disks. */
  NVME_CONTROLLER_WITHOUT_DRIVER("an NVMe controller has no driver", "device", "id", "class"),
  /** The same, for a virtual machine's disk. */
  VIRTIO_DEVICE_WITHOUT_DRIVER(
      "a virtual machine's disk controller has no driver", "device", "id", "class"),
  /** A USB device that calls itself a disk or stick, and no driver for USB storage. */
  USB_STORAGE_WITHOUT_DRIVER("a USB disk has no driver", "device", "id", "model"),
  /** The firmware hides disks behind a RAID mode of the chip set. */
  RAID_MODE_CONTROLLER("the disk controller is set to a RAID mode", "device", "id"),
  /** A graphics device is in the list of devices, and no driver has taken it. */
  GRAPHICS_DEVICE_WITHOUT_DRIVER("a graphics device has no driver", "device", "id", "class"),
  /** A network device is in the list of devices, and no driver has taken it. */
  NETWORK_DEVICE_WITHOUT_DRIVER("a network device has no driver", "device", "id", "class"),
  /** The kernel looked for devices, and no disk is among them. */
  NO_DISK_AT_ALL("the kernel found no disk at all", "wanted"),
  /** Every controller has a driver, its ports report nothing attached, and there is no disk. */
  PORT_LINK_DOWN_WHERE_ROOT_SHOULD_BE("no port of the machine answers with a disk", "port"),
  /** What was asked for by an identifier is on none of the disks that are there. */
  WANTED_ID_NOT_AMONG_VOLUMES("the wanted identifier is on none of the disks", "id", "disk"),
  /** What was asked for by a device's name is not there, while other disks are. */
  WANTED_DEVICE_MISSING_BUT_OTHER_DISKS_PRESENT(
      "the wanted device is missing, other disks are there", "device", "disk"),
  /** A disk with a size, on which nothing is: no partition, file system or array. */
  DISK_SEEN_WITHOUT_PARTITIONS("a disk has no partitions", "disk", "size"),
  /** A disk was there and went away. */
  DISK_SEEN_AND_GONE("a disk went away", "disk"),
  /** A disk on USB came up after the wait for root had ended. */
  USB_DISK_LATE("a USB disk came too late", "disk", "wanted"),
  /** The kernel was not told where the root file system is. */
  ROOT_NOT_ASKED_FOR("nothing names the root file system"),
  /** The kernel started without an initial ramdisk. */
  NO_RAMDISK_LOADED("the kernel got no initial ramdisk"),
  /** The kernel started with an initial ramdisk. */
  RAMDISK_LOADED("the kernel got an initial ramdisk"),
  /** An array started, or tried to, without all of its members. */
  ARRAY_MEMBER_MISSING("a member of an array is missing", "array"),
  /** An encrypted volume was asked for and never opened. */
  ENCRYPTED_VOLUME_NEVER_OPENED("an encrypted volume was never opened", "volume"),
  /** A volume group was looked for and never found. */
  VOLUME_GROUP_NEVER_FOUND("a volume group was never found", "volume"),
  /** A file system type was asked for that the kernel can't read, for want of its module. */
  FILE_SYSTEM_MODULE_MISSING("the kernel lacks the module of a file system", "type"),
  /** A unit was begun, holds the boot and was never done. */
  UNIT_STARTED_AND_NEVER_FINISHED("a unit was started and never finished", "unit", "waited"),
  /** A unit fails again and again. */
  UNIT_FAILS_AGAIN_AND_AGAIN("a unit fails again and again", "unit", "times"),
  /** A device that a unit waits for never came. */
  WAITED_FOR_DEVICE_NEVER_CAME("a device that the boot waits for never came", "device"),
  /** Messages are sent to another terminal than the one that the text was taken from. */
  CONSOLE_ELSEWHERE("messages go to another terminal", "console", "here"),
  /** The machine started again, and nobody had asked for it. */
  STARTED_AGAIN_BY_ITSELF("the machine started again by itself");

  private final String title;
  private final List<String> groups;

  Statement(String title, String... groups) {
    this.title = title;
    this.groups = List.of(groups);
  }

  /** What it says, as a short sentence without a full stop. */
  public String title() {
    return title;
  }

  /** Names of the values that it gives, for sentences of signs. */
  public List<String> groups() {
    return groups;
  }

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All words, in order. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Statement::word).toList();
  }

  /** The statement with that word. */
  public static Optional<Statement> of(String word) {
    return Arrays.stream(values()).filter(s -> s.word().equals(word)).findFirst();
  }
}
