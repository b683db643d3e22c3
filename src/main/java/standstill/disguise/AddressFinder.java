package standstill.disguise;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** IP addresses: IPv4 (RFC 791), IPv6 as RFC 4291, section 2.2 writes it. */
final class AddressFinder implements Finder {
  private static final int LONGEST = 60;
  private static final int LOOK_BACK = 24;

  /** Words after which four numbers are a version. */
  private static final Set<String> BEFORE_VERSIONS =
      Set.of(
          "version",
          "ver",
          "v",
          "rev",
          "revision",
          "firmware",
          "fw",
          "driver",
          "release",
          "bios",
          "build",
          "microcode",
          "vbios",
          "nvm",
          "linux",
          "systemd",
          "kernel",
          "api",
          "bootcode");

  private final StandIns standIns;

  AddressFinder(StandIns standIns) {
    this.standIns = standIns;
  }

  private static boolean isPart(char c) {
    return Hex.isDigit(c) || c == ':' || c == '.';
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    int at = 0;
    while (at < text.length()) {
      if (!isPart(text.charAt(at))) {
        at++;
        continue;
      }
      int end = at;
      while (end < text.length() && isPart(text.charAt(end))) {
        end++;
      }
      run(claims, at, end);
      at = end;
    }
    dashed(claims);
  }

  /** Characters that an address can be made of; what stands before and after is no part of it. */
  private void run(Claims claims, int begin, int finish) {
    String text = claims.text();
    int start = begin;
    int end = finish;
    if (start > 0 && Character.isLetterOrDigit(text.charAt(start - 1))) {
      start = after(text, start, end);
    }
    while (start < end && text.charAt(start) == ':' && !text.startsWith("::", start)) {
      start++;
    }
    if (end < text.length() && Character.isLetterOrDigit(text.charAt(end))) {
      end = before(text, start, end);
    }
    while (end > start && (text.charAt(end - 1) == '.' || isLoneColon(text, start, end))) {
      end--;
    }
    if (end - start < 3) {
      return;
    }
    if (end - start <= LONGEST && ipv6(claims, start, end)) {
      return;
    }
    int from = start;
    for (int i = start; i <= end; i++) {
      if (i == end || text.charAt(i) == ':') {
        dotted(claims, from, i);
        from = i + 1;
      }
    }
  }

  /** The rest of a word is no part of an address. */
  private static int after(String text, int start, int end) {
    int at = start;
    while (at < end && text.charAt(at) != ':' && text.charAt(at) != '.') {
      at++;
    }
    return at;
  }

  private static int before(String text, int start, int end) {
    int at = end;
    while (at > start && text.charAt(at - 1) != ':' && text.charAt(at - 1) != '.') {
      at--;
    }
    return at;
  }

  private static boolean isLoneColon(String text, int start, int end) {
    return text.charAt(end - 1) == ':' && (end - 2 < start || text.charAt(end - 2) != ':');
  }

  private boolean ipv6(Claims claims, int start, int end) {
    String value = claims.text().substring(start, end);
    int gap = value.indexOf("::");
    if (value.indexOf(':') < 0 || gap >= 0 && value.indexOf("::", gap + 1) >= 0) {
      return false;
    }
    List<String> groups = new ArrayList<>();
    for (String group : value.split(":", -1)) {
      if (!group.isEmpty()) {
        groups.add(group);
      }
    }
    int count = 0;
    for (int i = 0; i < groups.size(); i++) {
      boolean last = i + 1 == groups.size();
      boolean dotted = groups.get(i).indexOf('.') >= 0;
      if (dotted && !(last && isIpv4(groups.get(i))) || groups.get(i).length() > 4 && !dotted) {
        return false;
      }
      count += dotted ? 2 : 1;
    }
    boolean whole = gap < 0 && count == 8 && value.split(":", -1).length == groups.size();
    boolean shortened = gap >= 0 && count >= 1 && count < 8 && Hex.hasDigit(value);
    if (!whole && !shortened) {
      return false;
    }
    claims.take(start, end, ipv6(value, groups));
    return true;
  }

  /** Addresses that mean no machine stay: loopback, any, groups, and those for documentation. */
  private String ipv6(String value, List<String> groups) {
    String low = value.toLowerCase(Locale.ROOT);
    boolean everywhere =
        low.startsWith("2001:db8:")
            || low.startsWith("ff0")
            || groups.stream().allMatch(g -> g.matches("0*1?"))
            || value.length() < 6 && !low.startsWith("fe80");
    return everywhere || low.equals("fe80::") ? value : standIns.ipv6(low);
  }

  private static boolean isIpv4(String value) {
    String[] numbers = value.split("\\.", -1);
    if (numbers.length != 4) {
      return false;
    }
    for (String number : numbers) {
      if (!Trade.isNumber(number) || number.length() > 3 || Integer.parseInt(number) > 255) {
        return false;
      }
    }
    return true;
  }

  /** Dotted numbers: an address when there are four, with what may follow in a reversed name. */
  private void dotted(Claims claims, int start, int finish) {
    String text = claims.text();
    int end = finish;
    while (end > start && text.charAt(end - 1) == '.') {
      end--;
    }
    if (end <= start || end - start > 15) {
      return;
    }
    String value = text.substring(start, end);
    if (isIpv4(value) && !isEverywhere(value) && !isVersion(text, start, value)) {
      claims.take(start, end, standIns.ipv4(plain(value)));
    }
  }

  /** Without leading zeros, so that both spellings get one stand-in. */
  private static String plain(String value) {
    List<String> numbers = new ArrayList<>();
    for (String number : value.split("\\.")) {
      numbers.add(String.valueOf(Integer.parseInt(number)));
    }
    return String.join(".", numbers);
  }

  private static boolean isEverywhere(String value) {
    return value.startsWith("127.")
        || value.startsWith("0.")
        || value.startsWith("255.")
        || value.startsWith("192.0.2.")
        || value.startsWith("198.51.100.")
        || value.startsWith("203.0.113.")
        || value.startsWith("198.18.")
        || value.startsWith("198.19.");
  }

  private static boolean isPrivate(String value) {
    return value.startsWith("10.")
        || value.startsWith("192.168.")
        || value.startsWith("169.254.")
        || value.matches("172\\.(?:1[6-9]|2\\d|3[01])\\..*");
  }

  private static boolean isVersion(String text, int start, String value) {
    int at = start - 1;
    boolean hyphen =
        at > 0 && text.charAt(at) == '-' && Character.isLetterOrDigit(text.charAt(at - 1));
    int least = Math.max(0, start - LOOK_BACK);
    while (at >= least && !Character.isLetterOrDigit(text.charAt(at))) {
      at--;
    }
    int end = at + 1;
    while (at >= least && Character.isLetter(text.charAt(at))) {
      at--;
    }
    String word = text.substring(Math.max(at + 1, 0), Math.max(end, 0)).toLowerCase(Locale.ROOT);
    return BEFORE_VERSIONS.contains(word) || hyphen && !isPrivate(value);
  }

  /** {@code ip-10-1-2-3}, as rented machines are named. */
  private void dashed(Claims claims) {
    String text = claims.text();
    for (int at = text.indexOf("ip-"); at >= 0; at = text.indexOf("ip-", at + 3)) {
      if (at > 0 && Character.isLetterOrDigit(text.charAt(at - 1))) {
        continue;
      }
      int end = at + 3;
      while (end < text.length()
          && end < at + 19
          && (text.charAt(end) == '-' || Trade.isNumber(text.substring(end, end + 1)))) {
        end++;
      }
      String value = text.substring(at + 3, end).replace('-', '.');
      if (isIpv4(value)) {
        String address = isEverywhere(value) ? value : standIns.ipv4(plain(value));
        claims.take(at + 3, end, address.replace('.', '-'));
      }
    }
  }
}
