package standstill.disguise;

/**
 * A line as a reader would see it, with the way back to its own characters: colour codes are gone
 * however they are written, and characters that systemd, udev and fstab escape ({@code \x2d},
 * {@code \040}) stand for themselves. An escaped blank stands as a no-break space, so that it ends
 * no name.
 *
 * <p>Escape sequences are those of ECMA-48, sections 5.3 and 5.4.
 */
final class LineView {
  private static final char BLANK = '\u00a0';
  private static final int LONGEST_SEQUENCE = 60;

  private final String raw;
  private final StringBuilder clean;
  private int[] from;
  private int[] to;

  private LineView(String raw) {
    this.raw = raw;
    this.clean = new StringBuilder(raw.length());
    this.from = new int[raw.length()];
    this.to = new int[raw.length()];
  }

  static LineView of(String raw) {
    LineView view = new LineView(raw);
    view.read();
    return view;
  }

  private void read() {
    int at = 0;
    while (at < raw.length()) {
      char c = raw.charAt(at);
      int end = c == '[' ? debris(at) : sequence(at, c);
      if (end > at) {
        // A jump of the cursor parts two texts; a colour doesn't.
        if (raw.charAt(end - 1) != 'm' && raw.charAt(end - 1) != 'K') {
          add('\r', at, end);
        }
        at = end;
      } else if (c == '\\') {
        at = escaped(at);
      } else if (isInvisible(c)) {
        at++;
      } else {
        add(c, at, at + 1);
        at++;
      }
    }
  }

  private void add(char c, int start, int end) {
    from[clean.length()] = start;
    to[clean.length()] = end;
    clean.append(c);
  }

  private static boolean isInvisible(char c) {
    return c < ' ' && c != '\t' && c != '\r' && c != '\n'
        || c == 0x7f
        || c >= 0x80 && c < 0xa0
        || c == 0xad
        || c >= 0x200b && c <= 0x200f
        || c == 0x2060
        || c == 0xfeff;
  }

  /** The end of a control sequence that begins here, in any notation; the place itself if none. */
  private int sequence(int at, char c) {
    int begin = at;
    if (c == 0x1b) {
      begin = at + 1;
    } else if (c == 0x9b) {
      return parameters(at + 1, at);
    } else if (c == '^' && raw.startsWith("^[[", at)) {
      begin = at + 2;
    } else if (c == '#' && raw.startsWith("#033[", at)) {
      begin = at + 4;
    } else if (c == '\\') {
      for (String notation :
          new String[] {"\\x1b", "\\u001b", "\\033", "\\e", "\\x1B", "\\u001B"}) {
        if (raw.startsWith(notation + "[", at)) {
          begin = at + notation.length();
        }
      }
    }
    if (begin == at || begin >= raw.length()) {
      return at;
    }
    char kind = raw.charAt(begin);
    if (kind == '[') {
      return parameters(begin + 1, at);
    }
    if (c == 0x1b && (kind == ']' || kind == 'P')) {
      int limit = Math.min(raw.length(), begin + 4 * LONGEST_SEQUENCE);
      for (int i = begin; i < limit; i++) {
        if (raw.charAt(i) == 0x07 || raw.charAt(i) == 0x1b) {
          return i + (raw.startsWith("\u001b\\", i) ? 2 : 1);
        }
      }
    }
    return c == 0x1b ? begin + 1 : at;
  }

  private int parameters(int begin, int otherwise) {
    int limit = Math.min(raw.length(), begin + LONGEST_SEQUENCE);
    for (int i = begin; i < limit; i++) {
      char c = raw.charAt(i);
      if (c >= '@' && c <= '~') {
        return i + 1;
      }
      if (c < ' ' || c > '?') {
        return otherwise;
      }
    }
    return otherwise;
  }

  /** A colour whose escape character was lost: {@code [0;1;39m}. */
  private int debris(int at) {
    int limit = Math.min(raw.length(), at + 16);
    for (int i = at + 1; i < limit; i++) {
      char c = raw.charAt(i);
      if (c == 'm' && i > at + 1) {
        return i + 1;
      }
      if ((c < '0' || c > '9') && c != ';' && c != ':') {
        return at;
      }
    }
    return at;
  }

  private int escaped(int at) {
    int begin = raw.startsWith("\\\\", at) ? at + 2 : at + 1;
    int value = -1;
    int end = at;
    if (begin + 2 < raw.length() && raw.charAt(begin) == 'x') {
      value = number(begin + 1, begin + 3, 16);
      end = begin + 3;
    } else if (begin + 3 <= raw.length() && raw.charAt(begin) == '0') {
      value = number(begin, begin + 3, 8);
      end = begin + 3;
    }
    if (value < ' ' || value > '~') {
      add('\\', at, at + 1);
      return at + 1;
    }
    add(value == ' ' ? BLANK : (char) value, at, end);
    return end;
  }

  private int number(int begin, int end, int base) {
    int value = 0;
    for (int i = begin; i < end; i++) {
      int digit = Character.digit(raw.charAt(i), base);
      if (digit < 0) {
        return -1;
      }
      value = value * base + digit;
    }
    return value;
  }

  String raw() {
    return raw;
  }

  /** The line as it is read. */
  String text() {
    return clean.toString();
  }

  /** Where a character of the text begins in the line. */
  int from(int at) {
    return from[at];
  }

  /** Where a character of the text ends in the line. */
  int to(int at) {
    return to[at];
  }

  /** Whether a character stands escaped in the line. */
  boolean isEscaped(int at) {
    return to[at] - from[at] >= 4 && raw.charAt(from[at]) == '\\';
  }

  /** A stand-in as it has to be written where a name is escaped. */
  String written(String standIn, int start, int end) {
    int begin = from[start];
    int finish = to[end - 1];
    while (begin > 0 && from[start] - begin < LONGEST_SEQUENCE && isWord(raw.charAt(begin - 1))) {
      begin--;
    }
    while (finish < raw.length()
        && finish - to[end - 1] < LONGEST_SEQUENCE
        && isWord(raw.charAt(finish))) {
      finish++;
    }
    int escape = raw.substring(begin, finish).indexOf("\\x");
    if (escape < 0) {
      return standIn;
    }
    boolean twice = escape > 0 && raw.charAt(begin + escape - 1) == '\\';
    String before = twice ? "\\\\x" : "\\x";
    return standIn.replace("-", before + "2d").replace(":", before + "3a");
  }

  private static boolean isWord(char c) {
    return c > ' ' && c != '"' && c != '\'' && c != ',' && c != '=' && c != '/' && c != '@';
  }
}
