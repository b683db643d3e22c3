package standstill.disguise;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Stand-ins for identifiers: the same value always gets the same one, of the form that readers (and
 * this program's own patterns) expect in its place.
 *
 * <p>Addresses come from the ranges kept for documentation: RFC 5737 (IPv4), RFC 3849 (IPv6) and
 * RFC 7042, section 2.1.2 (hardware addresses). A log that has more than those hold goes on in the
 * range for measurements (RFC 2544) and among locally administered addresses (IEEE 802).
 */
final class StandIns {
  private static final String[] IPV4 = {"192.0.2.", "198.51.100.", "203.0.113."};
  private static final int IN_A_RANGE = 254;
  private static final String UUID = "0000000000004000800000000000";

  private final Map<Sort, Map<String, Integer>> numbers = new EnumMap<>(Sort.class);

  private int number(Sort sort, String value) {
    Map<String, Integer> known = numbers.computeIfAbsent(sort, s -> new HashMap<>());
    int next = known.size() + 1;
    Integer number = known.putIfAbsent(value.toLowerCase(Locale.ROOT), next);
    return number == null ? next : number;
  }

  /** How many different values of each sort were replaced. */
  Map<Sort, Integer> counts() {
    Map<Sort, Integer> counts = new EnumMap<>(Sort.class);
    numbers.forEach((sort, values) -> counts.put(sort, values.size()));
    return counts;
  }

  /** A name such as {@code host-1}. */
  String name(String word, Sort sort, String value) {
    return word + "-" + number(sort, value);
  }

  /** A name without a hyphen, where hyphens part names: {@code volume1}. */
  String word(String word, Sort sort, String value) {
    return word + number(sort, value);
  }

  /** Whether a name is one that {@link #name} or {@link #word} made. */
  static boolean isMade(String value) {
    int end = value.length();
    while (end > 0 && value.charAt(end - 1) >= '0' && value.charAt(end - 1) <= '9') {
      end--;
    }
    if (end == value.length()) {
      return false;
    }
    String word = value.substring(0, end);
    return switch (word) {
      case "host-", "user-", "serial-", "secret-", "value-", "network-", "unit-", "target-" -> true;
      case "instance-", "path-", "mark-", "volume", "disk-" -> true;
      default -> false;
    };
  }

  /** The thirty-two digits of a UUID, whatever stood between them. */
  String uuid(String digits) {
    if (digits.startsWith(UUID.substring(0, 20))) {
      return digits;
    }
    return UUID.substring(0, 20) + String.format(Locale.ROOT, "%012x", number(Sort.VOLUME, digits));
  }

  /** As many hexadecimal digits as the value has. */
  String digits(Sort sort, String value) {
    if (isZeroes(value)) {
      return value;
    }
    String digits = Integer.toHexString(number(sort, value));
    return digits.length() > value.length()
        ? digits.substring(digits.length() - value.length())
        : "0".repeat(value.length() - digits.length()) + digits;
  }

  /** Whether half of the digits are leading zeros: made here, or of no machine. */
  static boolean isZeroes(String digits) {
    int half = (digits.length() + 1) / 2;
    return digits.startsWith("0".repeat(half));
  }

  String ipv4(String value) {
    int n = number(Sort.IP_ADDRESS, value) - 1;
    if (n < IPV4.length * IN_A_RANGE) {
      return IPV4[n / IN_A_RANGE] + (n % IN_A_RANGE + 1);
    }
    int more = (n - IPV4.length * IN_A_RANGE) % (1 << 17);
    return "198." + (18 + (more >> 16)) + "." + (more >> 8 & 255) + "." + (more & 255);
  }

  String ipv6(String value) {
    return "2001:db8::" + Integer.toHexString(number(Sort.IP_ADDRESS, value) & 0xffff);
  }

  /** Twelve hexadecimal digits for the twelve of a hardware address. */
  String hardware(String digits) {
    int n = number(Sort.HARDWARE_ADDRESS, digits);
    return n < 256
        ? String.format(Locale.ROOT, "00005e0053%02x", n)
        : String.format(Locale.ROOT, "02005e%06x", n & 0xffffff);
  }
}
