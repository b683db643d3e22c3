package standstill.disguise;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Identifiers that a mark in the line announces, such as {@code Set hostname to <...>}. The marks
 * stand in the table {@code marks}, so that those of another kernel are data and not code.
 */
final class MarkFinder implements Finder {
  private static final String SEPARATOR = "\\s+\\|\\s+";
  private static final Map<String, String> VALUES = values();

  /**
   * A row.
   *
   * @param kind what the value is
   * @param needs text without which the pattern can't match; empty when the pattern has literals
   * @param pattern with the groups {@code before} and {@code value}
   */
  record Mark(String kind, String needs, Pattern pattern) {}

  private static final List<Mark> MARKS =
      KnownWords.lines("marks").stream().map(MarkFinder::mark).toList();
  private static final PatternSet PATTERNS =
      new PatternSet(MARKS.stream().map(Mark::pattern).toList());

  private final Map<String, UnaryOperator<String>> namings;

  MarkFinder(Map<String, UnaryOperator<String>> namings) {
    this.namings = Map.copyOf(namings);
  }

  private static Map<String, String> values() {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("NAME", "[\\pL\\pN][\\pL\\pN_.-]*");
    values.put("USER", "[\\pL_][\\pL\\pN_.+-]*");
    values.put("SERIAL", "[A-Za-z0-9][A-Za-z0-9_./+:-]{2,}");
    values.put("WORD", "[^\\s\"'<>|;,()\\[\\]{}]+");
    values.put("PATHPART", "[^\\s\"'<>|;,()\\[\\]{}/:]+");
    values.put("QUOTED", "[^\"<>]+");
    values.put("TICKED", "[^'`<>]+");
    values.put("REST", "[^\\s\"'][^\\r\\n\"]*");
    values.put("OWNER", "\\p{Lu}\\pL{1,30}['\u2019]s[ \u00a0]\\p{Lu}[\\pL\\pN-]{1,30}");
    values.put("DOTTED", "[\\pL\\pN][\\pL\\pN-]*(?:\\.[\\pL\\pN-]+){1,8}");
    values.put("IFACE", "[\\pL\\pN_]{2,12}");
    values.put("IQN", "[in]qn\\.\\d{4}-\\d\\d\\.[\\w.:-]+");
    values.put("WIDEHEX", "[0-9A-Fa-f]{16}(?:[0-9A-Fa-f]{16})?");
    values.put("DECIMAL", "\\d{12,20}");
    values.put("EIGHTHEX", "[0-9A-F]{8}");
    values.put("BOOTSERIAL", "[A-Z0-9][A-Z0-9_-]{7,40}");
    values.put("LONGSERIAL", "[A-Za-z0-9]{8,40}");
    values.put("DRIVESERIAL", "(?:WD-W[A-Z0-9]{8,14}|S[0-9A-Z]{4}N[A-Z0-9]{8,9})");
    return values;
  }

  private static Mark mark(String row) {
    String[] fields = row.split(SEPARATOR, 4);
    if (fields.length < 3 || !VALUES.containsKey(fields[2].strip())) {
      throw new IllegalStateException("marks.txt: not kind | before | VALUE | after: " + row);
    }
    String after = fields.length > 3 ? fields[3].strip() : "";
    String[] kind = fields[0].strip().split(" ", 2);
    return new Mark(
        kind[0],
        kind.length > 1 ? kind[1] : "",
        Pattern.known(
            "(?<before>"
                + fields[1].strip()
                + ")(?<value>"
                + VALUES.get(fields[2].strip())
                + ")(?:"
                + after
                + ")"));
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    PATTERNS.candidates(text, false, (pattern, place) -> every(claims, text, place));
  }

  private void every(Claims claims, String text, int place) {
    Mark mark = MARKS.get(place);
    if (!mark.needs().isEmpty() && !text.contains(mark.needs())) {
      return;
    }
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> match = mark.pattern().find(text, from);
      if (match.isEmpty()) {
        return;
      }
      String before = Objects.requireNonNull(match.get().values().get("before"));
      String value = Objects.requireNonNull(match.get().values().get("value"));
      int start = match.get().start() + before.length();
      claim(claims, mark.kind(), start, value);
      from = start + Math.max(1, value.length());
    }
  }

  private void claim(Claims claims, String kind, int start, String found) {
    String value = trimmed(found);
    if (value.isEmpty() || !claims.isFree(start, start + value.length())) {
      return;
    }
    UnaryOperator<String> naming = namings.get(kind);
    if (naming == null) {
      throw new IllegalStateException("marks.txt: unknown kind " + kind);
    }
    claims.take(start, start + value.length(), naming.apply(value));
  }

  /** Without the punctuation that ends a sentence rather than a name. */
  private static String trimmed(String value) {
    int end = value.indexOf('\u2026');
    end = end < 0 ? value.indexOf("...") : end;
    if (end < 0) {
      end = value.length();
    } else {
      // An ending that was cut in the middle is no part of the name either.
      int dot = value.lastIndexOf('.', end - 1);
      end = dot > 0 && end - dot < 9 ? dot : end;
    }
    while (end > 0 && ".,:;!?\\\u00a0 \t-_)".indexOf(value.charAt(end - 1)) >= 0) {
      end--;
    }
    return value.substring(0, end);
  }
}
