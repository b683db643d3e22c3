package standstill.mine;

import java.util.Optional;
import standstill.text.Pattern;

/**
 * What varies in a message from machine to machine, in the order in which kinds are tried at the
 * beginning of a word: the more particular shape first.
 *
 * <p>The names of the groups are those that the faults of the base use.
 */
enum Kind {
  /** RFC 4122 section 3. */
  UUID(
      "id",
      "[0-9a-fA-F-]{36}",
      "[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}"),
  /** The serial number of a FAT volume as Linux writes it. */
  FAT_ID("id", "[0-9A-F-]{9}", "[0-9A-F]{4}-[0-9A-F]{4}"),
  /** IEEE 802 section 8.1, colons or hyphens. */
  MAC(
      "mac",
      "[0-9a-fA-F:-]{17}",
      "(?:[0-9a-fA-F]{2}:){5}[0-9a-fA-F]{2}|(?:[0-9a-fA-F]{2}-){5}[0-9a-fA-F]{2}"),
  /** Domain, bus, device, function; with or without the domain. */
  PCI("address", "[0-9a-f:.]+", "(?:[0-9a-f]{4,8}:)?[0-9a-f]{2}:[0-9a-f]{2}\\.[0-7]"),
  /** Host, channel, target, unit. */
  SCSI("address", "\\d+:\\d+:\\d+:\\d+", "\\d{1,4}:\\d{1,3}:\\d{1,5}:\\d{1,8}"),
  TIME("time", "[\\d:.]+", "\\d{1,2}:\\d\\d:\\d\\d(?:\\.\\d+)?"),
  DATE("date", "\\d+-\\d+-\\d+", "\\d{4}-\\d\\d-\\d\\d"),
  IPV4("host", "[\\d.]+", "\\d{1,3}\\.\\d{1,3}\\.\\d{1,3}\\.\\d{1,3}"),
  /** RFC 4291 section 2.2: whole, or with one run left out. */
  IPV6(
      "host",
      "[0-9a-fA-F:]+",
      "(?:[0-9a-fA-F]{1,4}:){7}[0-9a-fA-F]{1,4}"
          + "|[0-9a-fA-F]{1,4}(?::[0-9a-fA-F]{1,4}){0,5}::(?:[0-9a-fA-F]{1,4}(?::[0-9a-fA-F]{1,4}){0,5})?"),
  /** Vendor and device of USB and PCI. */
  PRODUCT("device", "[0-9a-fA-F]{4}:[0-9a-fA-F]{4}", "[0-9a-fA-F]{4}:[0-9a-fA-F]{4}"),
  /** A device by its ACPI or PNP id and instance. */
  ACPI_DEVICE("device", "[A-Z]{3,4}[0-9A-F]{3,4}:\\d+", "[A-Z]{3,4}[0-9A-F]{3,4}:\\d\\d"),
  /** A place in the ACPI name space. */
  ACPI_OBJECT("object", "\\\\[\\w.^]+", "\\\\_[A-Z0-9]{2,3}[\\w.]*"),
  USB_PORT(
      "port",
      "\\d+-\\d[\\w.:-]*",
      "\\d{1,2}-\\d{1,2}(?:\\.\\d{1,2}){0,6}(?::\\d{1,2}\\.\\d{1,3})?"),
  USB_HUB_PORT(
      "port", "\\S+-port\\d+", "(?:usb\\d+|\\d{1,2}-\\d{1,2}(?:\\.\\d{1,2}){0,6})-port\\d+"),
  USB_ROOT("port", "usb\\d+", "usb\\d{1,2}"),
  ATA_PORT("port", "ata[\\d.]+", "ata\\d{1,3}(?:\\.\\d\\d)?"),
  /** A device node. */
  NODE("dev", "", "/dev/[^\\s,;'\"()\\[\\]<>|]*[\\w/@-]"),
  /** A disk, a partition or another block device by the kernel's name. */
  BLOCK(
      "dev",
      "[\\w-]+",
      "(?:sd(?:[a-z]|[a-d][a-z])|hd[a-h]|x?vd[a-z])\\d{0,3}|nvme\\d+(?:c\\d+)?(?:n\\d+(?:p\\d+)?)?"
          + "|mmcblk\\d+(?:p\\d+|boot\\d|rpmb)?|mmc\\d+|md_?d?\\d+(?:p\\d+)?|dm-\\d+|loop\\d+(?:p\\d+)?"
          + "|s[rg]\\d+|zram\\d+|nbd\\d+(?:p\\d+)?|fd\\d|pmem\\d+(?:p\\d+)?"),
  /** A disk or partition by the loader's name. */
  LOADER_DISK("disk", "hd\\d+[\\w,]*", "hd\\d{1,2}(?:,(?:gpt|msdos|bsd|apple)?\\d{1,3})*"),
  INTERFACE(
      "if",
      "\\w+",
      "(?:eth|wlan|wwan|usb|bond|br|virbr|veth|tun|tap)\\d{1,3}|(?:en|wl|ww)(?:o\\d+|[sp]\\d+\\w*|x[0-9a-f]{12})"),
  UNIT(
      "unit",
      "\\S+",
      "[\\w@:.\\\\-]{1,200}\\.(?:service|socket|mount|automount|device|target|swap|timer|path|slice|scope)"),
  /** A path of the firmware's or the system's file system. */
  PATH("path", "", "/[^\\s:,;'\"()\\[\\]<>|]*(?:[:,][^\\s:,;'\"()\\[\\]<>|]+)*[\\w/@*+~-]"),
  EFI_PATH("path", "", "\\\\[A-Za-z][A-Za-z0-9]*(?:\\\\[\\w.+-]*\\w)+"),
  /** A file by its ending, or a kernel or ramdisk by its usual name. */
  FILE(
      "file",
      "",
      "[\\w+@-][\\w.+@/-]{0,200}\\.(?:ko(?:\\.[gx]z|\\.zst)?|fw|bin|ucode|img|conf|cfg|so(?:\\.\\d+)*|mod|lst|c32|efi|EFI|hcd|dat)"
          + "|(?:vmlinu[xz]|initrd|initrd\\.img|initramfs|bzImage)-\\d[\\w.+~-]*\\w"),
  HEX("n", "0x[0-9a-fA-F]+", "0x[0-9a-fA-F]+"),
  VERSION(
      "version",
      "[\\w.+~-]+",
      "v?\\d+\\.\\d+(?:\\.\\d+)+(?:[.+~-]?\\w+)*|\\d+\\.\\d+(?:[+~-]\\w+)+"),
  /** Digits of an address or a checksum without a mark in front. */
  BARE_HEX("n", "[0-9a-fA-F]+", "[0-9a-fA-F]{8,}"),
  NUMBER("n", "[\\d.]+", "\\d+\\.\\d+"),
  INTEGER("n", "\\d+", "\\d+"),
  /** The value after a tag such as {@code LABEL=}; found by what stands before it. */
  TAG("id", "", ""),
  /** What stands in quotes; found by them. */
  NAME("name", "", ""),
  /** A word in which messages of one template differ. */
  WORD("what", "", "");

  private final String group;
  private final String regex;
  private final Optional<Pattern> shape;

  Kind(String group, String regex, String shape) {
    this.group = group;
    this.regex = regex;
    this.shape = shape.isEmpty() ? Optional.empty() : Optional.of(Pattern.known(shape));
  }

  /** Name of the group that captures it. */
  String group() {
    return group;
  }

  /** RE2 syntax that matches any value of the kind; empty for "up to what follows". */
  String regex() {
    return regex;
  }

  /** The length of a value of this kind at the beginning of a text; 0 when there is none. */
  int lengthAt(String text) {
    return shape
        .filter(pattern -> pattern.mayBeginWith(text.charAt(0)))
        .flatMap(pattern -> pattern.findAtStart(text))
        .map(Pattern.Match::end)
        .orElse(0);
  }
}
