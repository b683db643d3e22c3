package standstill.log;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The part of a terminal that programs draw on: rows of cells, bounded in both directions.
 *
 * <p>It exists to give back lines, not to look right: each row remembers from which input lines its
 * text came, and a row whose text is replaced by another one gives up the old text first. A row
 * that is only brought up to date (a countdown, a menu's bar that moves) counts once.
 */
final class Screen {
  static final int COLUMNS = 400;
  private static final int ROWS = 100;

  private final List<Row> rows = new ArrayList<>();
  private final List<Piece> given = new ArrayList<>();
  private int row;
  private int column;
  private int savedRow;
  private int savedColumn;

  /** One row, with what stood on it when the cursor came. */
  private static final class Row {
    final StringBuilder cells = new StringBuilder();
    int first;
    int last;
    String before = "";
    int beforeFirst;
    int beforeLast;
    boolean touched;
  }

  Screen() {
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

  void put(char c, int number) {
    Row here = touch();
    if (column < here.cells.length()) {
      here.cells.setCharAt(column, c);
    } else {
      while (here.cells.length() < column) {
        here.cells.append(' ');
      }
      here.cells.append(c);
    }
    if (!Frames.isEdge(c)) {
      if (here.first == 0) {
        here.first = number;
      }
      here.last = number;
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
    StringBuilder cells = touch().cells;
    if (mode == 0) {
      cells.setLength(Math.min(column, cells.length()));
    } else {
      int end = mode == 1 ? Math.min(column + 1, cells.length()) : cells.length();
      for (int i = 0; i < end; i++) {
        cells.setCharAt(i, ' ');
      }
    }
  }

  void eraseCells(int count) {
    if (row < rows.size()) {
      StringBuilder cells = touch().cells;
      for (int i = column; i < Math.min(cells.length(), column + count); i++) {
        cells.setCharAt(i, ' ');
      }
    }
  }

  void eraseBelow() {
    eraseLine(0);
    settle(row);
    while (rows.size() > row + 1) {
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
      rows.add(new Row());
    }
    Row here = rows.get(row);
    if (!here.touched) {
      here.touched = true;
      here.before = here.cells.toString();
      here.beforeFirst = here.first;
      here.beforeLast = here.last;
      here.first = 0;
      here.last = 0;
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
    String before = here.before;
    here.before = "";
    if (Frames.strip(before).isBlank()) {
      return;
    }
    if (before.contentEquals(here.cells) || (here.first == 0 && !here.cells.toString().isBlank())) {
      here.first = here.beforeFirst;
      here.last = here.beforeLast;
    } else if (!isUpdate(before, here.cells)) {
      give(before, here.beforeFirst, here.beforeLast);
    } else {
      here.first = Math.min(here.beforeFirst, here.first == 0 ? here.beforeFirst : here.first);
      here.last = Math.max(here.beforeLast, here.last);
    }
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
    give(gone.cells.toString(), gone.first, gone.last);
  }

  private void give(String text, int first, int last) {
    String inside = Frames.strip(text);
    if (!inside.isBlank()) {
      given.add(new Piece(Math.max(first, 1), Math.max(Math.max(first, last), 1), inside, false));
    }
  }
}
