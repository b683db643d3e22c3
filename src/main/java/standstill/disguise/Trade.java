package standstill.disguise;

import java.util.Locale;

/** What is known to name nobody: the tables of this room, read once. */
final class Trade {
  static final KnownWords WORDS = KnownWords.named("trade-words");
  static final KnownWords ACCOUNTS = KnownWords.named("accounts");
  static final KnownWords HOSTS = KnownWords.named("hosts");
  static final KnownWords DEVICES = KnownWords.named("devices");
  static final KnownWords VOLUMES = KnownWords.named("volumes");
  static final KnownWords UNITS = KnownWords.named("units");
  private static final KnownWords ENDS = KnownWords.named("internet-ends");
  private static final KnownWords PUBLIC = KnownWords.named("public-domains");

  private Trade() {}

  /** Whether each part of a compound such as {@code network-online} is a word of the trade. */
  static boolean isOfWords(String compound) {
    boolean any = false;
    int from = 0;
    for (int i = 0; i <= compound.length(); i++) {
      if (i < compound.length() && Character.isLetterOrDigit(compound.charAt(i))) {
        continue;
      }
      String part = compound.substring(from, i);
      from = i + 1;
      if (!part.isEmpty() && !isShort(part) && !WORDS.has(part)) {
        return false;
      }
      any |= !part.isEmpty();
    }
    return any;
  }

  private static boolean isShort(String part) {
    int letters = 0;
    for (int i = 0; i < part.length(); i++) {
      letters += Character.isLetter(part.charAt(i)) ? 1 : 0;
    }
    return letters <= 1 && part.length() <= 4;
  }

  static boolean isNumber(String text) {
    return !text.isEmpty() && text.chars().allMatch(c -> c >= '0' && c <= '9');
  }

  /** Whether the last label of a dotted name is one that hosts have. */
  static boolean isHostsEnd(String label) {
    return ENDS.has(label);
  }

  /** Whether a dotted name is of a domain that is public. */
  static boolean isPublic(String name) {
    String rest = name.toLowerCase(Locale.ROOT);
    for (int labels = 0; labels < 8; labels++) {
      if (PUBLIC.has(rest)) {
        return true;
      }
      int dot = rest.indexOf('.');
      if (dot < 0) {
        return false;
      }
      rest = rest.substring(dot + 1);
    }
    return false;
  }
}
