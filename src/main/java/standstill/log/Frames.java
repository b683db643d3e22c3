package standstill.log;

/** Takes off the frames that menus draw around their text. */
final class Frames {
  private Frames() {}

  /** The text of a drawn row without frame and padding; empty when it was nothing but frame. */
  static String strip(String row) {
    int from = 0;
    int to = row.length();
    while (from < to && isEdge(row.charAt(from))) {
      from++;
    }
    while (to > from && isEdge(row.charAt(to - 1))) {
      to--;
    }
    String inside = row.substring(from, to);
    return isRule(inside) ? "" : inside;
  }

  static boolean isEdge(char c) {
    return c == ' ' || c == '|' || isDrawing(c);
  }

  /** Unicode's box drawing and block elements. */
  static boolean isDrawing(char c) {
    return c >= '\u2500' && c <= '\u259f';
  }

  private static boolean isRule(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c != '+' && c != '-' && c != '=' && c != '|' && c != ' ' && !isDrawing(c)) {
        return false;
      }
    }
    return true;
  }

  /** Whether a line is drawn from line characters only, and long enough to be a frame. */
  static boolean isFrame(String line) {
    String text = line.strip();
    int drawn = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isDrawing(c)) {
        drawn++;
      } else if (c != ' ') {
        return text.length() >= 10
            && text.startsWith("+--")
            && text.endsWith("--+")
            && isRule(text);
      }
    }
    return drawn >= 2;
  }
}
