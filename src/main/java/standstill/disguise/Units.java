package standstill.disguise;

import java.util.List;
import java.util.Optional;
import standstill.text.Pattern;

/** Names of units as systemd.unit(5) has them. */
final class Units {
  private static final List<String> ENDINGS =
      List.of(
          ".service",
          ".socket",
          ".target",
          ".timer",
          ".path",
          ".slice",
          ".scope",
          ".mount",
          ".automount",
          ".swap",
          ".device");
  private static final Pattern NAME =
      Pattern.known(
          "(?<name>[\\pL\\pN:_.@\u00a0-]+)"
              + "\\.(?<ending>service|socket|target|timer|path|slice|scope|mount|automount|swap|device)"
              + "(?:[^\\pL\\pN_]|$)");

  private Units() {}

  static boolean hasEnding(String name) {
    return ENDINGS.stream().anyMatch(name::endsWith);
  }

  /** The next name at or after a place. */
  static Optional<Pattern.Match> next(String text, int from) {
    return NAME.find(text, from);
  }

  /** Whether a name is one of the trade's, also where a camera's reader took letters for digits. */
  static boolean isKnown(String base) {
    String plain = withoutDebris(base);
    return plain.isEmpty()
        || StandIns.isMade(plain)
        || Trade.UNITS.has(plain)
        || Trade.isOfWords(plain)
        || Trade.UNITS.has(plain.replace('1', 'l').replace('0', 'o'))
        || Trade.UNITS.has(plain.replace('1', 'i'))
        || isCut(plain);
  }

  /** The end of a colour code whose beginning was lost. */
  private static String withoutDebris(String base) {
    int at = 0;
    while (at < base.length() && at < 2 && Character.isDigit(base.charAt(at))) {
      at++;
    }
    boolean debris = at > 0 && base.startsWith("m", at);
    return debris ? base.substring(at + 1) : base;
  }

  /** Shortened in the middle: known by its beginning, or short enough to say nothing. */
  private static boolean isCut(String base) {
    int at = base.indexOf("..");
    return at >= 0 && (at < 3 || Trade.UNITS.has(base.substring(0, at)));
  }
}
