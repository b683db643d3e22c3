package standstill.text;

import java.util.Comparator;

/**
 * A place in a file, counted from 1 as editors count.
 *
 * @param file the file's name as shown to a person
 * @param line 1 or more; 0 when the problem belongs to the file as a whole
 * @param column 1 or more; 0 when the problem belongs to the line or file as a whole
 */
public record Position(String file, int line, int column) implements Comparable<Position> {
  private static final Comparator<Position> ORDER =
      Comparator.comparing(Position::file)
          .thenComparingInt(Position::line)
          .thenComparingInt(Position::column);

  /** The file as a whole. */
  public static Position ofFile(String file) {
    return new Position(file, 0, 0);
  }

  @Override
  public int compareTo(Position other) {
    return ORDER.compare(this, other);
  }

  /**
   * {@code file:line:column}, the form of the GNU coding standards, section "Formatting Error
   * Messages".
   */
  @Override
  public String toString() {
    if (line == 0) {
      return file;
    }
    return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
  }
}
