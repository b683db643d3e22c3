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
  /** Shapes of secrets, and marks before others; group {@code value}, the rest stays. */
  private static final java.util.List<Pattern> SHAPES =
      KnownWords.lines("secret-shapes").stream().map(Pattern::known).toList();

  private static final PatternSet SHAPE_SET = new PatternSet(SHAPES);
  private static final Set<String> NO_VALUES =
      Set.of("yes", "no", "on", "off", "true", "false", "none", "null", "failed", "ok", "hidden");
  private static final int LONGEST = 4_000;
  private static final int LONGEST_KEY = 60;
  private static final int SHORTEST_SHAPE = 16;
  private static final int SHORTEST_SHAPELESS = 64;

  private final Register register;

  SecretFinder(Register register) {
    this.register = register;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    boolean longRun = hasLongRun(text);
    SHAPE_SET.candidates(
        text,
        false,
        (pattern, place) -> {
          if (longRun || !pattern.literals().isEmpty()) {
            shapes(claims, text, pattern);
          }
        });
    if (text.indexOf('=') >= 0 || text.indexOf(':') >= 0) {
      keys(claims, text);
    }
  }

  /** Shapes that no literal announces are long; most lines have nothing so long. */
  private static boolean hasLongRun(String text) {
    int run = 0;
    for (int i = 0; i < text.length(); i++) {
      run = text.charAt(i) == '-' || Character.isLetterOrDigit(text.charAt(i)) ? run + 1 : 0;
      if (run >= SHORTEST_SHAPE) {
        return true;
      }
    }
    return false;
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
      if (!before.isEmpty() || !isPlainWord(value)) {
        secret(claims, start, start + value.length());
      }
      from = Math.max(start + value.length(), match.get().start() + 1);
    }
  }

  /** A path or a number in one case is no key, however long. */
  private static boolean isPlainWord(String value) {
    boolean word =
        value.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == '/' || c == '+');
    boolean mixed =
        value.chars().anyMatch(Character::isUpperCase)
            && value.chars().anyMatch(Character::isLowerCase)
            && Hex.hasDigit(value);
    return value.length() >= SHORTEST_SHAPELESS && word && (!mixed || value.startsWith("/"));
  }

  private void keys(Claims claims, String text) {
    int from = 0;
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c != '=' && c != ':' || at < from) {
        continue;
      }
      int keyEnd = at;
      while (keyEnd > from && " \"'\\".indexOf(text.charAt(keyEnd - 1)) >= 0 && at - keyEnd < 3) {
        keyEnd--;
      }
      int key = keyEnd;
      while (key > from && keyEnd - key < LONGEST_KEY && isKey(text.charAt(key - 1))) {
        key--;
      }
      if (key == keyEnd
          || StandIns.isMade(text.substring(key, keyEnd))
          || !SecretWords.isSecret(text.substring(key, keyEnd))) {
        continue;
      }
      int start = at + 1;
      while (start < text.length()
          && start - at < 4
          && " =\"'\\".indexOf(text.charAt(start)) >= 0) {
        start++;
      }
      String between = text.substring(keyEnd, start);
      int end = valueEnd(text, start, between);
      boolean sure = SecretWords.isSure(text.substring(key, keyEnd));
      if (isSecretValue(text.substring(start, end), between, sure)) {
        secret(claims, start, end);
        from = end;
      }
    }
  }

  private static boolean isKey(char c) {
    return c >= 'a' && c <= 'z'
        || c >= 'A' && c <= 'Z'
        || c >= '0' && c <= '9'
        || "_.-".indexOf(c) >= 0;
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
  private static boolean isSecretValue(String value, String between, boolean sure) {
    if (value.isEmpty() || NO_VALUES.contains(value.toLowerCase(java.util.Locale.ROOT))) {
      return false;
    }
    boolean prose = between.indexOf('=') < 0 && between.endsWith(" ");
    return !prose || sure && (Hex.hasDigit(value) || !Trade.isOfWords(value) && value.length() > 3);
  }

  private void secret(Claims claims, int start, int end) {
    if (start < end && !StandIns.isMade(claims.text().substring(start, end))) {
      claims.takeOver(
          start, end, register.named("secret", Sort.SECRET, claims.text().substring(start, end)));
    }
  }
}
