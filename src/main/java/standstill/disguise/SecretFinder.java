package standstill.disguise;

import java.util.Optional;
import java.util.Set;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Secrets that are known by what stands before them, or by their shape: passwords, tokens, recovery
 * keys, hashes of passwords, keys.
 */
final class SecretFinder implements Finder {
  /** Keys with a value; words like {@code keymap} only begin as they do. */
  private static final Pattern KEY =
      Pattern.known(
          "(?<key>[A-Za-z][A-Za-z0-9_.-]{0,60})(?<between>[\"']? ?[:=]{1,2} ?[\"']?|[\"'] ?(?:value|to) [\"'])");

  /** Shapes of secrets, and marks before others; group {@code value}, the rest stays. */
  private static final java.util.List<Pattern> SHAPES =
      KnownWords.lines("secret-shapes").stream().map(Pattern::known).toList();

  private static final PatternSet SHAPE_SET = new PatternSet(SHAPES);
  private static final Set<String> NO_VALUES =
      Set.of("yes", "no", "on", "off", "true", "false", "none", "null", "failed", "ok", "hidden");
  private static final int LONGEST = 4_000;

  private final Register register;

  SecretFinder(Register register) {
    this.register = register;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    SHAPE_SET.candidates(text, false, (pattern, place) -> shapes(claims, text, pattern));
    if (text.indexOf('=') >= 0 || text.indexOf(':') >= 0 || text.contains("value")) {
      keys(claims, text);
    }
  }

  private void shapes(Claims claims, String text, Pattern pattern) {
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> match = pattern.find(text, from);
      if (match.isEmpty()) {
        return;
      }
      String before = match.get().values().getOrDefault("before", "");
      String value = match.get().values().getOrDefault("value", "");
      int start = match.get().start() + before.length();
      secret(claims, start, start + value.length());
      from = Math.max(start + value.length(), match.get().start() + 1);
    }
  }

  private void keys(Claims claims, String text) {
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> match = KEY.find(text, from);
      if (match.isEmpty()) {
        return;
      }
      String key = match.get().values().getOrDefault("key", "");
      int start = match.get().end();
      from = start;
      String between = match.get().values().getOrDefault("between", "");
      if (SecretWords.isSecret(key) && isValue(between)) {
        int end = valueEnd(text, start, between);
        if (isSecretValue(text.substring(start, end), between)) {
          secret(claims, start, end);
          from = Math.max(end, start);
        }
      }
    }
  }

  private static boolean isValue(String between) {
    return !between.isEmpty();
  }

  /** To the closing quote, or to the end of the word. */
  static int valueEnd(String text, int start, String between) {
    char quote = between.isEmpty() ? ' ' : between.charAt(between.length() - 1);
    boolean quoted = quote == '"' || quote == '\'';
    int end = start;
    while (end < text.length() && end - start < LONGEST) {
      char c = text.charAt(end);
      if (quoted ? c == quote : c <= ' ' || c == '"' || c == '\'') {
        break;
      }
      end++;
    }
    while (end > start && !quoted && ",;)]}".indexOf(text.charAt(end - 1)) >= 0) {
      end--;
    }
    return end;
  }

  /** After a colon and a blank stands prose as often as a value, so it must look like none. */
  private static boolean isSecretValue(String value, String between) {
    if (value.isEmpty() || NO_VALUES.contains(value.toLowerCase(java.util.Locale.ROOT))) {
      return false;
    }
    boolean prose = between.indexOf('=') < 0 && between.endsWith(" ");
    return !prose || Hex.hasDigit(value) || !Trade.isOfWords(value) && value.length() > 3;
  }

  private void secret(Claims claims, int start, int end) {
    if (start < end && !StandIns.isMade(claims.text().substring(start, end))) {
      claims.takeOver(
          start, end, register.named("secret", Sort.SECRET, claims.text().substring(start, end)));
    }
  }
}
