package standstill.log;

/**
 * Finds where a kernel line cuts into another line.
 *
 * <p>The shape of the stamp, {@code [ seconds.micros] }, is only what makes a place worth a look;
 * whether it is a stamp is for the line forms to say.
 */
final class CutIns {
  private static final int DECIMALS = 6;

  private CutIns() {}

  /** Offset of the next place that looks like a stamp, or -1. */
  static int next(String text, int from) {
    int at = text.indexOf('[', from);
    while (at >= 0) {
      if (stampEnd(text, at) > 0) {
        return at;
      }
      at = text.indexOf('[', at + 1);
    }
    return -1;
  }

  /** Offset after the stamp that begins at an offset, or -1 when none does. */
  static int stampEnd(String text, int at) {
    int i = at;
    if (i >= text.length() || text.charAt(i) != '[') {
      return -1;
    }
    i++;
    int blanksEnd = Math.min(text.length(), i + 8);
    while (i < blanksEnd && text.charAt(i) == ' ') {
      i++;
    }
    int point = digits(text, i);
    if (point == i || point - i > 7 || point >= text.length() || text.charAt(point) != '.') {
      return -1;
    }
    int end = digits(text, point + 1);
    boolean closed = end < text.length() && text.charAt(end) == ']';
    return end - point - 1 == DECIMALS && closed ? end + 1 : -1;
  }

  private static int digits(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }
}
