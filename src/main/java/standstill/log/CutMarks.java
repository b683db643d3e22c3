package standstill.log;

import java.util.Locale;
import java.util.Set;

/** Knows the lines by which people say that they left something out, and the fences they set. */
final class CutMarks {
  private static final Set<String> WORDS =
      Set.of("snip", "snipsnip", "snipped", "cut", "truncated", "omitted", "trimmed", "skipped");

  private static final String PUNCTUATION = "[](){}<>-*.~=_ /\\";

  private CutMarks() {}

  /** {@code ...}, {@code [...]}, {@code (snip)}, {@code --- 8< ---} and the like. */
  static boolean isCut(String text) {
    String line = text.strip();
    if (line.isEmpty() || line.length() > 40) {
      return false;
    }
    if (line.contains("8<") || line.contains(">8")) {
      return onlyOf(line, "-8<> =~");
    }
    StringBuilder word = new StringBuilder();
    int dots = 0;
    int marks = 0;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (Character.isLetter(c)) {
        word.append(c);
      } else if (PUNCTUATION.indexOf(c) < 0) {
        return false;
      } else {
        dots += c == '.' ? 1 : 0;
        marks += c == ' ' ? 0 : 1;
      }
    }
    if (word.isEmpty()) {
      return dots >= 2 && dots <= 6 && onlyOf(line, "[](){}<>. ");
    }
    return marks >= 2 && WORDS.contains(word.toString().toLowerCase(Locale.ROOT));
  }

  /** A line that begins or ends a block of code in a forum's plain-text notation. */
  static boolean isFence(String text) {
    String line = text.strip();
    boolean ticks = line.startsWith("```");
    if (!ticks && !line.startsWith("~~~")) {
      return false;
    }
    for (int i = 3; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c != line.charAt(0) && !Character.isLetterOrDigit(c) && c != '-' && c != '_') {
        return false;
      }
    }
    return line.length() <= 24;
  }

  private static boolean onlyOf(String text, String allowed) {
    for (int i = 0; i < text.length(); i++) {
      if (allowed.indexOf(text.charAt(i)) < 0) {
        return false;
      }
    }
    return true;
  }
}
