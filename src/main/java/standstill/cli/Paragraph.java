package standstill.cli;

import java.util.ArrayList;
import java.util.List;

/** Text broken into lines of a terminal's width. */
final class Paragraph {
  /** Width of all output, in columns. */
  static final int WIDTH = 80;

  private Paragraph() {}

  /** The text in lines, the first after {@code first}, the others after as many blanks. */
  static List<String> lines(String first, String text) {
    return lines(first, " ".repeat(first.length()), text);
  }

  /**
   * The text in lines; words longer than a line stand on a line of their own and are cut where they
   * must be.
   */
  static List<String> lines(String first, String others, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.strip().split("\\s+")) {
      String rest = word;
      if (!empty && line.length() + 1 + rest.length() > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder(others);
        empty = true;
      }
      while (line.length() + rest.length() + (empty ? 0 : 1) > WIDTH) {
        int room = Math.max(1, WIDTH - line.length());
        lines.add(line + rest.substring(0, room));
        rest = rest.substring(room);
        line = new StringBuilder(others);
      }
      line.append(empty ? "" : " ").append(rest);
      empty = false;
    }
    lines.add(line.toString());
    return lines;
  }

  /** The text on one line, its end replaced by dots when it does not fit. */
  static String oneLine(String text, int width) {
    return text.length() <= width ? text : text.substring(0, Math.max(0, width - 3)) + "...";
  }
}
