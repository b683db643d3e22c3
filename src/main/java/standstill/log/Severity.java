package standstill.log;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * Severities and facilities, RFC 5424 section 6.2.1 tables 1 and 2. The kernel's own {@code <N>}
 * prefix is the same number: {@code (facility << 3) | level}.
 */
final class Severity {
  private static final List<List<String>> WORDS =
      List.of(
          List.of("emerg", "panic"),
          List.of("alert"),
          List.of("crit"),
          List.of("err", "error"),
          List.of("warn", "warning"),
          List.of("notice"),
          List.of("info"),
          List.of("debug"));

  private Severity() {}

  static int ofPriority(int priority) {
    return priority & 7;
  }

  static int facilityOfPriority(int priority) {
    return priority >> 3;
  }

  /** The severity of a word, or of a single digit. */
  static OptionalInt ofWord(String word) {
    if (word.length() == 1 && word.charAt(0) >= '0' && word.charAt(0) <= '7') {
      return OptionalInt.of(word.charAt(0) - '0');
    }
    String lower = word.toLowerCase(Locale.ROOT);
    for (int i = 0; i < WORDS.size(); i++) {
      if (WORDS.get(i).contains(lower)) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }
}
