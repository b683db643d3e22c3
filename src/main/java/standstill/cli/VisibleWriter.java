package standstill.cli;

import java.io.IOException;
import java.io.Writer;
import java.security.SecureRandom;

/**
 * Writes text for a terminal with every character that steers one shown as its number.
 *
 * <p>Logs, bases and file names come from others, and a terminal obeys what stands in them: it
 * moves the cursor, hides text, writes to the clipboard. So control characters (Unicode general
 * category Cc) but line ends and tabs, format characters (Cf) but the two joiners that scripts
 * need, line and paragraph separators and lone surrogates are written as {@code \\u001b}, which is
 * also how a JSON string has them. The program's own colours come in as {@link #mark marks} that
 * nobody outside can write, and become escape codes here alone.
 */
final class VisibleWriter extends Writer {
  /** What the program itself may do to a terminal. */
  enum Mark {
    BOLD("\u001b[1m"),
    FAINT("\u001b[2m"),
    WARN("\u001b[33m"),
    PLAIN("\u001b[0m"),
    LINE_AGAIN("\r");

    private final String code;

    Mark(String code) {
      this.code = code;
    }
  }

  /** First of the characters that stand for no text and never will (Unicode 15, section 23.7). */
  private static final char NONCHARACTER = '\uFDD0';

  private static final char ZERO_WIDTH_NON_JOINER = '\u200C';
  private static final char ZERO_WIDTH_JOINER = '\u200D';

  /** Characters for private use that follow a mark; nobody outside this process knows them. */
  private static final String SECRET = secret();

  private final Writer to;

  VisibleWriter(Writer to) {
    super(to);
    this.to = to;
  }

  /** What stands for a mark in text that goes through such a writer. */
  static String mark(Mark mark) {
    return (char) (NONCHARACTER + mark.ordinal()) + SECRET;
  }

  private static String secret() {
    return new SecureRandom()
        .ints(4, '\uE000', '\uF900')
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  /** A text with what steers a terminal shown; marks too, as nothing is to obey them. */
  static String visible(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      appendVisible(out, c, i + 1 < text.length() && text.charAt(i + 1) == '\n');
      i += Character.charCount(c);
    }
    return out.toString();
  }

  private static void appendVisible(StringBuilder out, int c, boolean beforeLineEnd) {
    if (steers(c, beforeLineEnd)) {
      for (char unit : Character.toChars(c)) {
        out.append(String.format("\\u%04x", (int) unit));
      }
    } else {
      out.appendCodePoint(c);
    }
  }

  private static boolean steers(int c, boolean beforeLineEnd) {
    if (c == '\n' || c == '\t' || (c == '\r' && beforeLineEnd)) {
      return false;
    }
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          true;
      case Character.FORMAT -> c != ZERO_WIDTH_NON_JOINER && c != ZERO_WIDTH_JOINER;
      default -> c >= NONCHARACTER && c < NONCHARACTER + Mark.values().length;
    };
  }

  @Override
  public void write(char[] characters, int from, int length) throws IOException {
    String text = new String(characters, from, length);
    StringBuilder out = new StringBuilder(length);
    int done = 0;
    for (int i = text.indexOf(SECRET); i >= 0; i = text.indexOf(SECRET, i + 1)) {
      int mark = i == done ? -1 : text.charAt(i - 1) - NONCHARACTER;
      if (mark >= 0 && mark < Mark.values().length) {
        out.append(visible(text.substring(done, i - 1))).append(Mark.values()[mark].code);
        done = i + SECRET.length();
      }
    }
    to.write(out.append(visible(text.substring(done))).toString());
  }

  @Override
  public void flush() throws IOException {
    to.flush();
  }

  @Override
  public void close() throws IOException {
    to.close();
  }
}
