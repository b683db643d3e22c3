package standstill.log;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The part of a terminal that programs draw on: rows of cells, bounded in both directions.
 *
 * <p>It exists to give back lines, not to look right: each cell remembers which input line drew it,
 * and a row whose text is replaced by another one gives up the old text first. A row that is only
 * brought up to date (a countdown, a menu's bar that moves) counts once, under the lines that drew
 * what it shows last; one that is drawn again as it was keeps the lines that drew it first.
 */
final class Screen {
  static final int COLUMNS = 400;
  private static final int ROWS = 100;

  private final Cells budget;
  private final List<Row> rows = new ArrayList<>();
  private final List<Piece> given = new ArrayList<>();
  private int row;
  private int column;
  private int savedRow;
  private int savedColumn;

  /** The input line that draws. */
  private int line = 1;

  /** One row, with what stood on it when the cursor came. */
  private static final class Row {
    final StringBuilder cells = new StringBuilder();

    /** For each cell the input line that drew it. */
    int[] drawnBy = new int[80];

    String before = "";
    int[] beforeDrawnBy = {};
    boolean touched;

    void set(int column, char c, int line) {
      cells.setCharAt(column, c);
      drawnBy[column] = line;
    }

    void append(char c, int line) {
      if (cells.length() == drawnBy.length) {
        drawnBy = Arrays.copyOf(drawnBy, drawnBy.length * 2);
      }
      drawnBy[cells.length()] = line;
      cells.append(c);
    }
  }

  Screen(Cells budget) {
    this.budget = budget;
    reset();
  }

  int row() {
    return row;
  }

  int column() {
    return column;
  }

  void reset() {
    rows.clear();
    given.clear();
    row = 0;
    column = 0;
    savedRow = 0;
    savedColumn = 0;
  }

  void save() {
    savedRow = row;
    savedColumn = column;
  }

  void restore() {
    move(savedRow, savedColumn);
  }

  void move(int toRow, int toColumn) {
    if (toRow != row || toColumn < column) {
      settle(row);
    }
    row = Math.min(Math.max(toRow, 0), ROWS - 1);
    column = Math.min(Math.max(toColumn, 0), COLUMNS);
  }

  void lineFeed() {
    settle(row);
    if (row == ROWS - 1) {
      if (!rows.isEmpty()) {
        give(rows.remove(0));
      }
    } else {
      row++;
    }
    column = 0;
  }

  /** Says which input line draws from now on. */
  void drawnBy(int inputLine) {
    line = inputLine;
  }

  void put(char c) {
    Row here = touch();
    if (column < here.cells.length()) {
      here.set(column, c, line);
    } else {
      budget.use(column - here.cells.length(), line);
      while (here.cells.length() < column) {
        here.append(' ', line);
      }
      here.append(c, line);
    }
    column++;
  }

  /** Empties the row for a line that doesn't care what stands there. */
  void clearRow() {
    if (row < rows.size() && rows.get(row).cells.length() > 0) {
      eraseLine(2);
      settle(row);
    }
  }

  void eraseLine(int mode) {
    if (row >= rows.size()) {
      return;
    }
    Row here = touch();
    int length = here.cells.length();
    if (mode == 0) {
      here.cells.setLength(Math.min(column, length));
    } else {
      blank(here, 0, mode == 1 ? Math.min(column + 1, length) : length);
    }
  }

  void eraseCells(int count) {
    if (row < rows.size()) {
      Row here = touch();
      blank(here, column, Math.min(here.cells.length(), column + count));
    }
  }

  private void blank(Row here, int from, int to) {
    budget.use(Math.max(to - from, 0), line);
    for (int i = from; i < to; i++) {
      here.set(i, ' ', line);
    }
  }

  void eraseBelow() {
    eraseLine(0);
    settle(row);
    while (rows.size() > row + 1) {
      budget.use(rows.size() - row, line);
      give(rows.remove(row + 1));
    }
  }

  /** Everything that was to be read, in order of the input lines, and an empty screen. */
  List<Piece> drain() {
    for (int i = 0; i < rows.size(); i++) {
      settle(i);
    }
    rows.forEach(this::give);
    List<Piece> all = new ArrayList<>();
    Set<String> known = new HashSet<>();
    given.stream()
        .sorted(Comparator.comparingInt(Piece::number))
        .filter(p -> known.add(p.text()))
        .forEach(all::add);
    reset();
    return all;
  }

  private Row touch() {
    while (rows.size() <= row) {
      budget.use(1, line);
      rows.add(new Row());
    }
    Row here = rows.get(row);
    if (!here.touched) {
      here.touched = true;
      here.before = here.cells.toString();
      here.beforeDrawnBy = Arrays.copyOf(here.drawnBy, here.before.length());
      budget.use(here.before.length(), line);
    }
    return here;
  }

  /** The cursor leaves a row: was its text replaced, or only brought up to date? */
  private void settle(int index) {
    if (index >= rows.size() || !rows.get(index).touched) {
      return;
    }
    Row here = rows.get(index);
    here.touched = false;
    if (here.before.contentEquals(here.cells)) {
      System.arraycopy(here.beforeDrawnBy, 0, here.drawnBy, 0, here.beforeDrawnBy.length);
    } else if (!Frames.strip(here.before).isBlank() && !isUpdate(here.before, here.cells)) {
      give(here.before, here.beforeDrawnBy);
    }
    here.before = "";
    here.beforeDrawnBy = new int[0];
  }

  /** Whether at least half of what stood there still stands. */
  private static boolean isUpdate(String before, CharSequence now) {
    int kept = 0;
    int shown = 0;
    for (int i = 0; i < before.length(); i++) {
      char c = before.charAt(i);
      if (c != ' ') {
        shown++;
        kept += i < now.length() && now.charAt(i) == c ? 1 : 0;
      }
    }
    return kept * 2 >= shown;
  }

  private void give(Row gone) {
    give(gone.cells.toString(), gone.drawnBy);
  }

  private void give(String text, int[] drawnBy) {
    budget.use(text.length(), line);
    String inside = Frames.strip(text);
    if (inside.isBlank()) {
      return;
    }
    int first = Integer.MAX_VALUE;
    int last = 1;
    int from = text.indexOf(inside);
    for (int i = from; i < from + inside.length(); i++) {
      if (text.charAt(i) != ' ') {
        first = Math.min(first, drawnBy[i]);
        last = Math.max(last, drawnBy[i]);
      }
    }
    given.add(new Piece(first, last, inside, false));
  }
}
