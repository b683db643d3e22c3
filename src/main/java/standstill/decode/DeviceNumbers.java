package standstill.decode;

import java.util.List;
import standstill.text.Pattern;

/** Major and minor numbers of block devices, as the kernel prints them when it looks for root. */
final class DeviceNumbers implements Codes {
  private static final String SOURCE =
      "Linux Documentation/admin-guide/devices.txt; init/do_mounts.c";
  private static final Pattern UNKNOWN =
      Pattern.known("unknown-block\\((?P<code>(?P<major>\\d{1,4}),(?P<minor>\\d{1,7}))\\)");
  private static final Pattern MOUNTED =
      Pattern.known(
          "Mounted root .{0,80}on device (?P<code>(?P<major>\\d{1,4}):(?P<minor>\\d{1,7}))\\.?");
  private static final Pattern PAIR =
      Pattern.known("^\\(?(?P<code>(?P<major>\\d{1,4})[,:] ?(?P<minor>\\d{1,7}))\\)?$");

  @Override
  public void inLine(Findings line) {
    line.each(UNKNOWN, p -> add(line, p));
    line.each(MOUNTED, p -> add(line, p));
  }

  @Override
  public void alone(Number number, Findings code) {
    code.each(UNKNOWN, p -> add(code, p));
    code.each(PAIR, p -> add(code, p));
  }

  private static void add(Findings line, Findings.Place place) {
    line.add(
        place,
        Kind.DEVICE_NUMBER,
        name(Integer.parseInt(place.get("major")), Integer.parseInt(place.get("minor"))),
        SOURCE);
  }

  /** The device's name, or why the number alone has none. */
  private static String name(int major, int minor) {
    if (major == 0 && minor == 0) {
      return "no device at all: the name on the command line was not resolved, or no driver found a disk";
    }
    if (major == 0) {
      return "no disk: a file system without a block device of its own (network, memory)";
    }
    int sd = major == 8 ? 0 : major >= 65 && major <= 71 ? major - 64 : -1;
    if (sd >= 0 && minor < 256) {
      return "disk " + partition(diskName(sd * 16 + minor / 16), minor % 16, "");
    }
    if ((major == 3 || major == 22) && minor < 128) {
      String disk = (major == 3 ? List.of("hda", "hdb") : List.of("hdc", "hdd")).get(minor / 64);
      return "IDE disk " + partition(disk, minor % 64, "");
    }
    switch (major) {
      case 1:
        return "ram" + minor + ", a memory disk (old initial ramdisk)";
      case 2:
        return "fd" + minor + ", a floppy drive";
      case 7:
        return "loop" + minor + ", a file used as a disk";
      case 9:
        return "md" + minor + ", a RAID array";
      case 11:
        return "sr" + minor + ", an optical drive";
      case 31:
        return "flash or ROM block device, number " + minor;
      case 43:
        return "network block device, number " + minor;
      case 179:
        return "memory card "
            + partition("mmcblk" + minor / 8, minor % 8, "p")
            + " (8 numbers per card, unless set otherwise)";
      case 259:
        return "a device of the extended range (NVMe drives and others): the number alone does not name it";
      default:
        return major >= 240 && major <= 254
            ? "a number given out at run time (device mapper, virtual disks): the number alone does not name it"
            : "block device with major number " + major + ", minor " + minor;
    }
  }

  private static String partition(String disk, int number, String separator) {
    return number == 0 ? disk + " (the whole disk)" : disk + separator + number;
  }

  /** sda to sdz, then sdaa and so on. */
  private static String diskName(int index) {
    String letters = "";
    for (int i = index; i >= 0; i = i / 26 - 1) {
      letters = (char) ('a' + i % 26) + letters;
    }
    return "sd" + letters;
  }
}
