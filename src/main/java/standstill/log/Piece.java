package standstill.log;

import java.util.List;

/**
 * Something a person could have read on one line, before its meaning is looked at.
 *
 * @param number number of the first input line that it came from
 * @param last number of the last input line that it came from
 * @param text what was to be read
 * @param afterClear whether the screen was cleared just before
 * @param seams of a text that was joined: where each piece of it begins, the first one too
 */
record Piece(int number, int last, String text, boolean afterClear, List<Seam> seams) {
  Piece {
    seams = List.copyOf(seams);
  }

  /** A piece that was not joined. */
  Piece(int number, int last, String text, boolean afterClear) {
    this(number, last, text, afterClear, List.of());
  }

  /**
   * A place in a joined text.
   *
   * @param offset where the text of a piece begins
   * @param number number of the first input line of that piece
   * @param last number of its last input line
   */
  record Seam(int offset, int number, int last) {}

  /** The same place with another text, of which it can't be said where it was joined. */
  Piece withText(String other) {
    return other.equals(text) ? this : new Piece(number, last, other, afterClear);
  }

  /** A part of the text, under the numbers of the lines that the part came from. */
  Piece part(int from, int to) {
    int first = number;
    int end = last;
    for (Seam seam : seams) {
      first = seam.offset() <= from ? seam.number() : first;
      end = seam.offset() < to ? seam.last() : end;
    }
    return new Piece(first, end, text.substring(from, to), afterClear && from == 0);
  }
}
