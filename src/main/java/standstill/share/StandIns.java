package standstill.share;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Stand-ins for identifiers: the same value always gets the same one, of the form that readers (and
 * this program's own patterns) expect in its place.
 *
 * <p>Addresses come from the ranges kept for documentation (RFC 5737 and RFC 3849); made-up network
 * hardware addresses have the bit for local administration set (IEEE 802).
 */
final class StandIns {
  private final Map<String, Integer> numbers = new HashMap<>();
  private final Map<String, Integer> counts = new HashMap<>();

  private int number(String kind, String value) {
    return numbers.computeIfAbsent(
        kind + ' ' + value.toLowerCase(Locale.ROOT), k -> counts.merge(kind, 1, Integer::sum));
  }

  /** A name such as {@code host-1}. */
  String name(String kind, String value) {
    return kind + "-" + number(kind, value);
  }

  /** An identifier with dashes and digits as they were, such as a UUID. */
  String uuid(String value, String dash) {
    String digits = String.format(Locale.ROOT, "%012x", number("uuid", value));
    return String.join(dash, "00000000", "0000", "4000", "8000", digits);
  }

  /** As many hexadecimal digits as the value has. */
  String digits(String kind, String value) {
    String digits = Integer.toHexString(number(kind, value));
    return "0".repeat(Math.max(0, value.length() - digits.length())) + digits;
  }

  String ipv4(String value) {
    int n = number("ipv4", value) - 1;
    String[] ranges = {"192.0.2.", "198.51.100.", "203.0.113."};
    // Past all three ranges addresses repeat; that many in one boot log says nothing any more.
    return ranges[n / 254 % ranges.length] + (n % 254 + 1);
  }

  String ipv6(String value) {
    return "2001:db8::" + Integer.toHexString(number("ipv6", value));
  }

  /** Twelve hexadecimal digits in pairs. */
  String mac(String digits, String between) {
    String made = String.format(Locale.ROOT, "0200%08x", number("mac", digits));
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < made.length(); i += 2) {
      out.append(i == 0 ? "" : between).append(made, i, i + 2);
    }
    return out.toString();
  }
}
