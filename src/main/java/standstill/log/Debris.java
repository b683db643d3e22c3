package standstill.log;

/**
 * Takes out colour codes that lost their escape character on the way: {@code [0;1;31m}, {@code
 * [0m}, {@code [0;1;...}.
 *
 * <p>Square brackets mean much in a boot log, so only what can't be anything else goes: numbers and
 * semicolons ending in {@code m} that are colours, screen codes with a private mark or two numbers,
 * and colour numbers that were cut off by an ellipsis. Written-out escape characters ({@code ^[},
 * {@code \x1b}, {@code #033}) go together with the code that follows.
 */
final class Debris {
  private static final int LONGEST = 24;

  private Debris() {}

  static String clean(String text) {
    int at = text.indexOf('[');
    if (at < 0) {
      return text;
    }
    StringBuilder out = null;
    int copied = 0;
    boolean afterCode = true;
    int expected = 0;
    while (at >= 0) {
      int end = codeEnd(text, at, afterCode && at == expected);
      if (end > 0) {
        out = out == null ? new StringBuilder(text.length()) : out;
        out.append(text, copied, escapeStart(text, at, copied));
        copied = end;
        afterCode = true;
        expected = end;
        at = text.indexOf('[', end);
      } else {
        at = text.indexOf('[', at + 1);
      }
    }
    return out == null ? text : out.append(text, copied, text.length()).toString();
  }

  /** Where a written-out escape character before the bracket begins; else the bracket itself. */
  private static int escapeStart(String text, int bracket, int from) {
    for (String written : new String[] {"^[", "\\x1b", "\\x1B", "\\033", "\\e", "#033", "\u241b"}) {
      int start = bracket - written.length();
      if (start >= from && text.startsWith(written, start)) {
        return start;
      }
    }
    return bracket;
  }

  private static int codeEnd(String text, int bracket, boolean bareAllowed) {
    int at = bracket + 1;
    int limit = Math.min(text.length(), bracket + LONGEST);
    boolean mark = at < limit && (text.charAt(at) == '?' || text.charAt(at) == '=');
    at += mark ? 1 : 0;
    int from = at;
    int separators = 0;
    while (at < limit && isParameter(text.charAt(at))) {
      separators += text.charAt(at) < '0' || text.charAt(at) > '9' ? 1 : 0;
      at++;
    }
    if (at >= text.length()) {
      // Cut off by the end of the line.
      return separators > 0 && isColour(text, from, at) ? at : -1;
    }
    if (at >= limit) {
      return -1;
    }
    char last = text.charAt(at);
    boolean written = escapeStart(text, bracket, 0) < bracket;
    if (mark) {
      return at > from && (last == 'h' || last == 'l') ? at + 1 : -1;
    }
    if (last == 'm' && isColour(text, from, at) && !isUnit(text, at)) {
      boolean bare = at == from && !written;
      return !bare || (bareAllowed && endsWord(text, at + 1)) ? at + 1 : -1;
    }
    if ((last == 'H' || last == 'f') && (separators == 1 || written)) {
      return at + 1;
    }
    if (last == 'K' || last == 'J' || last == 'H') {
      boolean oneDigit = at == from + 1 && text.charAt(from) <= '3';
      return written
              || (bareAllowed && at == from && endsWord(text, at + 1))
              || (oneDigit && last != 'H')
          ? at + 1
          : -1;
    }
    boolean ellipsis = last == '\u2026' || text.startsWith("...", at);
    return separators > 0 && ellipsis && isColour(text, from, at) ? at : -1;
  }

  private static boolean endsWord(String text, int at) {
    return at >= text.length() || !Character.isLetterOrDigit(text.charAt(at));
  }

  private static boolean isParameter(char c) {
    return (c >= '0' && c <= '9') || c == ';' || c == ':';
  }

  /** Whether all numbers are those of ECMA-48's SELECT GRAPHIC RENDITION and its extensions. */
  private static boolean isColour(String text, int from, int to) {
    int number = 0;
    boolean extended = false;
    for (int i = from; i <= to; i++) {
      char c = i < to ? text.charAt(i) : ';';
      if (c >= '0' && c <= '9') {
        number = number * 10 + (c - '0');
        if (number > 999) {
          return false;
        }
      } else {
        boolean known = number <= 65 || (number >= 90 && number <= 107);
        if (!known && !(extended && number <= 255)) {
          return false;
        }
        extended |= number == 38 || number == 48 || number == 58;
        number = 0;
      }
    }
    return true;
  }

  /** {@code [5ms]}, {@code [1min]}, {@code [5m]}: a length of time, not a colour. */
  private static boolean isUnit(String text, int m) {
    boolean oneNumber = text.lastIndexOf('[', m) >= m - 3;
    boolean closed = text.startsWith("]", m + 1) && text.charAt(m - 1) != '0';
    return text.startsWith("s]", m + 1)
        || text.startsWith("in]", m + 1)
        || text.startsWith("in ", m + 1)
        || (closed && oneNumber && text.charAt(m - 1) != '[');
  }
}
