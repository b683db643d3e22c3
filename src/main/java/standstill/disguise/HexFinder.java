package standstill.disguise;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Identifiers that are groups of hexadecimal digits: UUIDs (RFC 9562), hardware addresses (EUI-48),
 * worldwide names and EUI-64, and long identifiers of machines, boots and containers.
 */
final class HexFinder implements Finder {
  /** Identifiers that are the same on every machine: UEFI Specification 2.10, 3.3 and 5.3. */
  private static final Set<String> COMMON_UUIDS =
      Set.of(
          "8be4df6193ca11d2aa0d00e098032b8c",
          "c12a7328f81f11d2ba4b00a0c93ec93b",
          "00000000000000000000000000000000",
          "ffffffffffffffffffffffffffffffff");

  private static final List<String> FIRMWARE =
      List.of("Fv(", "FvFile(", "VenHw(", "VenMedia(", "VenMsg(", "mei::");

  private static final int UUID_DIGITS = 32;
  private static final int LONG = 32;
  private static final Set<String> NETWORK_PREFIXES = Set.of("enx", "wlx", "wwx", "ibx", "slx");

  private final StandIns standIns;

  HexFinder(StandIns standIns) {
    this.standIns = standIns;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    int at = 0;
    while (at < text.length()) {
      if (!Character.isLetterOrDigit(text.charAt(at))) {
        at++;
        continue;
      }
      int end = Hex.wordEnd(text, at);
      if (Hex.isAll(text, at, end)) {
        end = Math.max(end, chain(claims, Chain.at(text, at)));
      } else {
        word(claims, at, end);
      }
      at = end;
    }
  }

  /** Claims what a chain begins with; gives the offset to go on from. */
  private int chain(Claims claims, Chain chain) {
    if (chain.begins(8, 4, 4, 4, 12)) {
      if (isOfFirmware(claims.text(), chain.start())) {
        return chain.end(5);
      }
      return take(claims, chain, 0, 5, uuid(chain.digits(0, 5)));
    }
    if (chain.size() == 1) {
      return single(claims, chain, chain.groups().get(0));
    }
    if (chain.isOf(2) && chain.size() >= 6) {
      return pairs(claims, chain);
    }
    if (chain.size() >= 16 && chain.isOf(1)) {
      // The name of an IPv6 address, digit by digit (RFC 3596).
      String digits = chain.digits(0, chain.size());
      return take(claims, chain, 0, chain.size(), standIns.digits(Sort.IP_ADDRESS, digits));
    }
    if (isCisco(chain) || isHalves(chain)) {
      return hardware(claims, chain, 0, chain.size());
    }
    if (chain.begins(1, 6, 9) && chain.separator() == '-') {
      return take(claims, chain, 0, 3, standIns.digits(Sort.WIDE_NAME, chain.digits(0, 3)));
    }
    if (chain.size() == 6 && chain.separator() == ':' && isShortPairs(chain)) {
      return hardware(claims, chain, 0, 6);
    }
    return 0;
  }

  /** Parts of firmware and of its device paths have the same GUID everywhere (UEFI 2.10, 10.3). */
  private static boolean isOfFirmware(String text, int start) {
    return FIRMWARE.stream().anyMatch(before -> text.startsWith(before, start - before.length()));
  }

  private static boolean isCisco(Chain chain) {
    String digits = chain.digits(0, chain.size());
    return chain.size() == 3
        && chain.isOf(4)
        && (chain.separator() == '.' || chain.separator() == '-')
        && Hex.hasLetter(digits)
        && Hex.hasDigit(digits);
  }

  private static boolean isHalves(Chain chain) {
    String digits = chain.digits(0, chain.size());
    return chain.size() == 2
        && chain.isOf(6)
        && (chain.separator() == '-' || chain.separator() == ':')
        && Hex.hasLetter(digits)
        && Hex.hasDigit(digits);
  }

  /** Some kernels leave a leading zero out of each pair. */
  private static boolean isShortPairs(Chain chain) {
    return chain.groups().stream().allMatch(g -> g.length() <= 2)
        && chain.groups().stream().filter(g -> g.length() == 2).count() >= 3
        && Hex.hasLetter(chain.digits(0, 6));
  }

  private int pairs(Claims claims, Chain chain) {
    int size = chain.size();
    if (size == 6) {
      return hardware(claims, chain, 0, 6);
    }
    if (size == 7) {
      // A boot loader puts the kind of hardware (RFC 1700, ARP) before the address.
      return hardware(claims, chain, 1, 7);
    }
    Sort sort = size == 8 ? Sort.WIDE_NAME : Sort.ID;
    return take(claims, chain, 0, size, standIns.digits(sort, chain.digits(0, size)));
  }

  private int hardware(Claims claims, Chain chain, int from, int to) {
    String digits = padded(chain, from, to);
    return take(claims, chain, from, to, hardware(digits));
  }

  private static String padded(Chain chain, int from, int to) {
    StringBuilder digits = new StringBuilder();
    for (String group : chain.groups().subList(from, to)) {
      digits.append(group.length() == 1 ? "0" : "").append(group);
    }
    return digits.toString().toLowerCase(Locale.ROOT);
  }

  /** Nobody's addresses, addresses of groups, and what this room has made stay. */
  private String hardware(String digits) {
    boolean nobodys =
        digits.equals("000000000000")
            || digits.equals("ffffffffffff")
            || digits.startsWith("01005e")
            || digits.startsWith("3333")
            || digits.startsWith("0180c2")
            || digits.startsWith("00005e0053")
            || digits.startsWith("02005e");
    return nobodys ? digits : standIns.hardware(digits);
  }

  private String uuid(String digits) {
    String low = digits.toLowerCase(Locale.ROOT);
    return COMMON_UUIDS.contains(low) ? low : standIns.uuid(low);
  }

  /** Claims groups with other digits in their places. */
  private static int take(Claims claims, Chain chain, int from, int to, String digits) {
    int start = from == 0 ? chain.start() : chain.end(from) + 1;
    int end = chain.end(to);
    String old = claims.text().substring(start, end);
    String bare = old.replaceAll("[^0-9A-Za-z]", "");
    boolean shortPairs = bare.length() < digits.length();
    String made;
    if (bare.equalsIgnoreCase(digits)) {
      made = old;
    } else if (shortPairs) {
      made = String.join(String.valueOf(chain.separator()), digits.split("(?<=\\G..)"));
    } else {
      made = VolumeNames.spread(digits, old);
    }
    claims.take(start, end, isUpper(old) ? made.toUpperCase(Locale.ROOT) : made);
    return end;
  }

  private static boolean isUpper(String text) {
    return text.chars().anyMatch(c -> c >= 'A' && c <= 'F')
        && text.chars().noneMatch(c -> c >= 'a' && c <= 'f');
  }

  /** One group: its meaning stands before it, or it is long enough to be nothing but a name. */
  private int single(Claims claims, Chain chain, String word) {
    String text = claims.text();
    String before =
        text.substring(Math.max(0, chain.start() - 12), chain.start()).toLowerCase(Locale.ROOT);
    if (word.length() == 12
        && isMarked(before, "mac", "addr", "macaddr", "hwaddr", "address", "ether", "bootif")) {
      return take(claims, chain, 0, 1, hardware(word.toLowerCase(Locale.ROOT)));
    }
    boolean wide = word.length() == 16 || word.length() == UUID_DIGITS;
    if (wide
        && isMarked(before, "eui", "naa", "wwn", "wwpn", "wwnn", "t10", "guid", "nguid", "euid")) {
      return take(claims, chain, 0, 1, standIns.digits(Sort.WIDE_NAME, word));
    }
    if (word.length() >= LONG && Hex.hasLetter(word)) {
      boolean uuid = word.length() == UUID_DIGITS;
      return take(claims, chain, 0, 1, uuid ? uuid(word) : standIns.digits(Sort.ID, word));
    }
    return 0;
  }

  /** Whether the last word before a place is one of these. */
  private static boolean isMarked(String before, String... marks) {
    int end = before.length();
    while (end > 0 && !Character.isLetterOrDigit(before.charAt(end - 1))) {
      end--;
    }
    if (before.length() - end > 3) {
      return false;
    }
    String words = before.substring(0, end);
    for (String mark : marks) {
      int start = words.length() - mark.length();
      if (words.endsWith(mark) && (start == 0 || !Character.isLetter(words.charAt(start - 1)))) {
        return true;
      }
    }
    return false;
  }

  /** Words that begin with more than digits: {@code enx3caabbccdd08}, {@code 0x5001...}. */
  private void word(Claims claims, int start, int end) {
    String word = claims.text().substring(start, end);
    int length = word.length();
    if (length == 15
        && NETWORK_PREFIXES.contains(word.substring(0, 3))
        && Hex.isAll(word, 3, length)) {
      claims.take(start + 3, end, hardware(word.substring(3)));
    } else if (word.startsWith("0x")
        && (length == 18 || length == 34)
        && Hex.isAll(word, 2, length)
        && isWide(word)) {
      claims.take(start + 2, end, standIns.digits(Sort.WIDE_NAME, word.substring(2)));
    } else if ((length == 14 || length == 15) && word.startsWith("veth") && Hex.hasDigit(word)) {
      claims.take(start + 4, end, standIns.digits(Sort.ID, word.substring(4)));
    }
  }

  /** Names of NAA formats 2, 5, 6, c and e (SPC-4, 7.8.6.6); kernel addresses begin with f or 0. */
  private static boolean isWide(String word) {
    return "256ceCE".indexOf(word.charAt(2)) >= 0 && !word.endsWith("00000000");
  }
}
