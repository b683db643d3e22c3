package standstill.disguise;

import standstill.text.Pattern;

/** Names and numbers of disks, volumes, pools and file systems. */
final class VolumeNames {
  private static final Pattern PARTITION_OF =
      Pattern.known("^(?<disk>[0-9A-Fa-f]{8})-[0-9A-Fa-f]{2}$");
  private static final Pattern FAT = Pattern.known("^[0-9A-Fa-f]{4}-[0-9A-Fa-f]{4}$");
  private static final Pattern DIGITS = Pattern.known("^(?:0x)?[0-9A-Fa-f]{8,}$");
  private static final Pattern DATE = Pattern.known("^\\d{4}(?:-\\d\\d){5,6}$");
  private static final Pattern CUT_UUID =
      Pattern.known("^[0-9A-Fa-fSsOoIl]{8}-[0-9A-Fa-fSsOoIl-]{0,27}$");
  private static final Pattern BUS =
      Pattern.known(
          "^(?:ata|nvme|usb|scsi|mmc|dm-uuid|lvm-pv-uuid|virtio|wwn|md-uuid|md-name|ieee1394|memstick)-");
  private static final String DM_NAME = "dm-name-";

  private final Register register;

  VolumeNames(Register register) {
    this.register = register;
  }

  private static boolean isHarmless(String name) {
    return name.length() < 2
        || !Hex.hasLetter(name)
        || Trade.VOLUMES.has(name)
        || Trade.DEVICES.has(name)
        || Trade.isOfWords(name)
        || isMade(name)
        || isDiskWithUse(name);
  }

  /** Whether a stand-in is a part of the name already. */
  private static boolean isMade(String name) {
    for (String part : name.split("[-_.]")) {
      if (StandIns.isMade(part)) {
        return true;
      }
    }
    return false;
  }

  /** {@code sda3_crypt}, as installers name what they encrypt. */
  private static boolean isDiskWithUse(String name) {
    int at = name.indexOf('_');
    return at > 0
        && Trade.DEVICES.has(name.substring(0, at))
        && Trade.isOfWords(name.substring(at + 1));
  }

  /** A label, volume group, logical volume, pool, array or mapped disk. */
  String volume(String value) {
    return isHarmless(value) ? value : learnt(value);
  }

  /** Words of the trade at both ends stay: {@code lena_crypt} tells that it is encrypted. */
  private String learnt(String value) {
    int start = 0;
    int end = value.length();
    for (int i = 0; i < end; i++) {
      if (isJoint(value.charAt(i)) && Trade.isOfWords(value.substring(start, i))) {
        start = i + 1;
      }
    }
    for (int i = end - 1; i > start; i--) {
      if (isJoint(value.charAt(i)) && Trade.isOfWords(value.substring(i + 1, end))) {
        end = i;
      }
    }
    String name = value.substring(start, end).replace('\u00a0', ' ');
    String standIn =
        value.substring(0, start)
            + register.standIns().word("volume", Sort.VOLUME, name)
            + value.substring(end);
    register.names().learn(value, standIn);
    if (value.indexOf('-') >= 0) {
      register.names().learn(value.replace("-", "--"), standIn.replace("-", "--"));
    }
    return standIn;
  }

  private static boolean isJoint(char c) {
    return c == '-' || c == '_' || c == '.';
  }

  /** A name under /dev/mapper: group and volume, whose own hyphens stand doubled. */
  String mapped(String name) {
    if (Trade.VOLUMES.has(name) || isMade(name) || isDiskWithUse(name)) {
      return name;
    }
    for (int i = 1; i + 1 < name.length(); i++) {
      if (name.charAt(i) == '-' && name.charAt(i + 1) == '-') {
        i++;
      } else if (name.charAt(i) == '-') {
        return part(name.substring(0, i)) + "-" + part(name.substring(i + 1));
      }
    }
    return part(name);
  }

  private String part(String doubled) {
    String plain = doubled.replace("--", "-");
    String standIn = volume(plain);
    return standIn.equals(plain) ? doubled : standIn.replace("-", "--");
  }

  /** The value of UUID=, PARTUUID= and names under by-uuid that no other sort has claimed. */
  String number(String value) {
    StandIns standIns = register.standIns();
    if (PARTITION_OF.foundIn(value)) {
      return standIns.digits(Sort.VOLUME, value.substring(0, 8)) + value.substring(8);
    }
    if (FAT.foundIn(value)) {
      String digits = standIns.digits(Sort.VOLUME, value.replace("-", ""));
      return digits.substring(0, 4) + "-" + digits.substring(4);
    }
    if (DATE.foundIn(value)) {
      String digits = standIns.digits(Sort.VOLUME, value.replace("-", ""));
      return spread(digits, value);
    }
    if (DIGITS.foundIn(value)) {
      int from = value.startsWith("0x") ? 2 : 0;
      return value.substring(0, from) + standIns.digits(Sort.VOLUME, value.substring(from));
    }
    if (CUT_UUID.foundIn(value)) {
      return spread(standIns.uuid(value), value);
    }
    return volume(value);
  }

  /** Digits in the places of a pattern's digits. */
  static String spread(String digits, String shape) {
    StringBuilder out = new StringBuilder(shape.length());
    int next = 0;
    for (int i = 0; i < shape.length(); i++) {
      boolean digit = Character.isLetterOrDigit(shape.charAt(i));
      out.append(digit && next < digits.length() ? digits.charAt(next++) : shape.charAt(i));
    }
    return out.toString();
  }

  /** A name under by-id: the bus stays, model and serial number go. */
  String disk(String name) {
    if (name.startsWith(DM_NAME)) {
      return DM_NAME + mapped(name.substring(DM_NAME.length()));
    }
    int bus = BUS.find(name).map(Pattern.Match::end).orElse(0);
    String rest = name.substring(bus);
    boolean nobodys = rest.startsWith("0x") && StandIns.isZeroes(rest.substring(2));
    if (nobodys || StandIns.isMade(rest) || Trade.VOLUMES.has(rest)) {
      return name;
    }
    String standIn = register.standIns().name("disk", Sort.SERIAL, rest);
    register.names().learn(rest, standIn);
    return name.substring(0, bus) + standIn;
  }
}
