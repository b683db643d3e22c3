package standstill.log;

/**
 * Something a person could have read on one line, before its meaning is looked at.
 *
 * @param number number of the first input line that it came from
 * @param last number of the last input line that it came from
 * @param text what was to be read
 * @param afterClear whether the screen was cleared just before
 */
record Piece(int number, int last, String text, boolean afterClear) {
  Piece withText(String other) {
    return other.equals(text) ? this : new Piece(number, last, other, afterClear);
  }
}
