package standstill.log;

import java.util.ArrayList;
import java.util.List;

/**
 * Reads a capture as the terminal would have shown it, and keeps what was visible at any time.
 *
 * <p>Lines without control characters, nearly all of a log, are taken as they are. In the others
 * colours go, backspaces overwrite, and each stretch between carriage returns is a line of its own:
 * on a real screen it would be overwritten by the next one, and the update that matters would be
 * lost. Once the cursor is sent to a place on the screen, a {@link Screen} stands in until it is
 * cleared. What codes may cost is bounded by {@link Cells}.
 */
final class Terminal {
  /** Longest line that is kept; what follows is counted and left out. */
  static final int LONGEST = 100_000;

  private static final int MOST_UPDATES = 20_000;
  private static final int RIGHT_EDGE = 79;
  private static final int MOST_COLUMNS = 250;
  private static final int PROBE_ROW = 100;
  private static final char ESC = '\u001b';

  private final List<Piece> out = new ArrayList<>();
  private final StringBuilder line = new StringBuilder();
  private int column;
  private int savedColumn;
  private int dropped;
  private boolean cleared;
  private int number;
  private int firstOfLine;
  private String lastOfLine = "";
  private final Cells cells;
  private final Screen screen;
  private final CutIns cutIns;
  private boolean onScreen;
  private int plainLines;

  /** No control string of this raw line ends before this offset. */
  private int openUntil;

  private Terminal(Cells cells, CutIns cutIns) {
    this.cells = cells;
    this.cutIns = cutIns;
    this.screen = new Screen(cells);
  }

  /**
   * Reads lines of input.
   *
   * @param cells what the codes of the whole text may still cost
   * @param cutIns what a stamp of the kernel looks like
   */
  static List<Piece> read(List<String> rawLines, Cells cells, CutIns cutIns) {
    Terminal terminal = new Terminal(cells, cutIns);
    for (int i = 0; i < rawLines.size(); i++) {
      terminal.rawLine(i + 1, rawLines.get(i));
    }
    terminal.leaveScreen();
    return terminal.out;
  }

  private void rawLine(int lineNumber, String raw) {
    number = lineNumber;
    screen.drawnBy(lineNumber);
    firstOfLine = out.size();
    lastOfLine = "";
    openUntil = 0;
    boolean plain = isPlain(raw);
    if (onScreen) {
      plainLines = plain || onlyColours(raw) ? plainLines + 1 : 0;
      if (plainLines > 10 || startsWithStamp(raw) || raw.length() > Screen.COLUMNS * 40) {
        leaveScreen();
      } else if (plainLines > 0) {
        screen.clearRow();
      }
    }
    if (plain && !onScreen && raw.length() <= LONGEST) {
      add(raw);
      return;
    }
    text(raw);
    if (onScreen) {
      screen.lineFeed();
    } else {
      flush();
    }
  }

  private static boolean isPlain(String raw) {
    for (int i = 0; i < raw.length(); i++) {
      if (isControl(raw.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isControl(char c) {
    return c < ' ' || (c >= 0x7f && c <= 0x9f);
  }

  /** Whether the line moves the cursor nowhere but forward. */
  private static boolean onlyColours(String raw) {
    int at = raw.indexOf(ESC);
    while (at >= 0) {
      if (at + 1 >= raw.length() || raw.charAt(at + 1) != '[') {
        return false;
      }
      ControlSequence sequence = ControlSequence.at(raw, at + 2);
      if (sequence.kind() != 'm' && sequence.kind() != 'K') {
        return false;
      }
      at = raw.indexOf(ESC, sequence.end());
    }
    return true;
  }

  private boolean startsWithStamp(String raw) {
    int at = 0;
    while (at < raw.length() && raw.charAt(at) == '\r') {
      at++;
    }
    return at < raw.length() && cutIns.isStamp(raw, at);
  }

  private void text(String raw) {
    int at = 0;
    while (at < raw.length()) {
      char c = raw.charAt(at);
      if (c == ESC) {
        at = escape(raw, at + 1);
      } else if (!isControl(c)) {
        put(c);
        at++;
      } else {
        at = control(raw, at, c);
      }
    }
  }

  private int control(String raw, int at, char c) {
    switch (c) {
      case '\r' -> carriageReturn();
      case '\b' -> left(1);
      case '\t' -> put(onScreen ? ' ' : '\t');
      case '\f', '\u000b', '\u0084', '\u0085' -> newLine();
      case '\u008d' -> up();
      case '\u009b' -> {
        return sequence(raw, at + 1, at + 1);
      }
      case '\u0090', '\u0098', '\u009d', '\u009e', '\u009f' -> {
        return string(raw, at + 1);
      }
      default -> {
        // Bells, zero bytes and what else prints nothing.
      }
    }
    return at + 1;
  }

  /** What stands after the escape character, by ECMA-48 and by kernels' own consoles. */
  private int escape(String raw, int at) {
    if (at >= raw.length()) {
      return at;
    }
    char c = raw.charAt(at);
    switch (c) {
      case '[' -> {
        return sequence(raw, at + 1, at);
      }
      case ']' -> {
        return operatingSystemCommand(raw, at + 1);
      }
      case 'P', 'X', '^', '_' -> {
        return string(raw, at + 1);
      }
      case '(', ')', '*', '+', '#', '%', ' ' -> {
        return Math.min(at + 2, raw.length());
      }
      case 'c' -> clear();
      case 'D', 'E' -> newLine();
      case 'M' -> up();
      case '7' -> save();
      case '8' -> restore();
      case '=', '>', '\\', 'H', 'N', 'O', 'Z' -> {
        // Keypad modes, tab stops, shifts: nothing is shown.
      }
      default -> {
        return at;
      }
    }
    return at + 1;
  }

  /** A command for the terminal's window; one kernel's console has two of fixed length. */
  private int operatingSystemCommand(String raw, int at) {
    if (at < raw.length() && raw.charAt(at) == 'R') {
      return at + 1;
    }
    if (at < raw.length() && raw.charAt(at) == 'P' && at + 8 <= raw.length()) {
      return at + 8;
    }
    return string(raw, at);
  }

  /** Skips a control string; one without an end is no control string. */
  private int string(String raw, int at) {
    int limit = Math.min(raw.length(), at + 4_096);
    for (int i = Math.max(at, openUntil); i < limit; i++) {
      char c = raw.charAt(i);
      if (c == 0x07 || c == 0x9c) {
        return i + 1;
      }
      if (c == ESC) {
        return i + 1 < raw.length() && raw.charAt(i + 1) == '\\' ? i + 2 : i;
      }
    }
    openUntil = limit;
    return at;
  }

  /**
   * Carries out a control sequence.
   *
   * @param bracket where to go on when it turns out to be none
   */
  private int sequence(String raw, int at, int bracket) {
    if (onScreen && cells.areSpent()) {
      leaveScreen();
    }
    ControlSequence sequence = ControlSequence.at(raw, at);
    if (sequence.kind() == 0) {
      // A code that was shortened together with its text ends in the ellipsis.
      boolean shortened =
          at < raw.length() && (raw.charAt(at) == '\u2026' || raw.charAt(at) == '.');
      return sequence.end() == at && !shortened ? bracket : sequence.end();
    }
    int count = Math.max(sequence.parameter(0, 1), 1);
    switch (sequence.kind()) {
      case 'H', 'f' -> position(sequence.parameter(0, 1), sequence.parameter(1, 1));
      case 'd' -> position(sequence.parameter(0, 1), onScreen ? screen.column() + 1 : column + 1);
      case 'J' -> eraseDisplay(sequence.parameter(0, 0));
      case 'K' -> eraseLine(sequence.parameter(0, 0));
      case 'A', 'F' -> {
        if (onScreen) {
          screen.move(screen.row() - count, sequence.kind() == 'A' ? screen.column() : 0);
        } else {
          up();
        }
      }
      case 'B', 'E' -> {
        if (onScreen) {
          screen.move(screen.row() + count, sequence.kind() == 'B' ? screen.column() : 0);
        } else {
          newLine();
        }
      }
      case 'C', 'a' -> right(count);
      case 'D' -> left(count);
      case 'G', '`' -> toColumn(count - 1);
      case 'X' -> eraseCells(count);
      case 'P' -> deleteCells(count);
      case 's' -> save();
      case 'u' -> restore();
      default -> {
        // Colours, modes, reports: nothing is shown.
      }
    }
    return sequence.end();
  }

  private void put(char c) {
    if (onScreen) {
      if (screen.column() < Screen.COLUMNS) {
        screen.put(c);
        return;
      }
      leaveScreen();
    }
    if (column >= LONGEST) {
      dropped++;
      return;
    }
    if (column < line.length()) {
      line.setCharAt(column, c);
    } else {
      cells.use(column - line.length(), number);
      while (line.length() < column) {
        line.append(' ');
      }
      line.append(c);
    }
    column++;
  }

  private void carriageReturn() {
    if (onScreen) {
      screen.move(screen.row(), 0);
    } else {
      flush();
    }
  }

  private void newLine() {
    if (onScreen) {
      screen.lineFeed();
    } else {
      flush();
    }
  }

  private void up() {
    if (onScreen) {
      screen.move(screen.row() - 1, screen.column());
    } else {
      flush();
    }
  }

  private void left(int count) {
    if (onScreen) {
      screen.move(screen.row(), screen.column() - count);
    } else {
      column = Math.max(column - count, 0);
    }
  }

  private void right(int count) {
    if (onScreen) {
      screen.move(screen.row(), screen.column() + count);
    } else if (cells.areSpent()) {
      column = Math.min(column + 1, line.length() + 1);
    } else if (column < RIGHT_EDGE) {
      column = Math.min(column + count, RIGHT_EDGE);
    } else {
      column = Math.min(column + count, Math.max(column, MOST_COLUMNS));
    }
  }

  private void toColumn(int wanted) {
    if (onScreen) {
      screen.move(screen.row(), wanted);
    } else {
      column = Math.min(wanted, cells.areSpent() ? line.length() + 1 : MOST_COLUMNS);
    }
  }

  private void save() {
    savedColumn = column;
    screen.save();
  }

  private void restore() {
    if (onScreen) {
      screen.restore();
    } else {
      column = savedColumn;
    }
  }

  private void position(int row, int wantedColumn) {
    if (row > PROBE_ROW || wantedColumn > Screen.COLUMNS) {
      // Sent far outside and asked where it is: that's how programs measure a terminal.
      return;
    }
    if (onScreen) {
      screen.move(row - 1, wantedColumn - 1);
      return;
    }
    if (line.length() > 0 && Math.abs(wantedColumn - 1 - column) <= 1) {
      // Firmware that redirects its screen confirms after each stretch where the cursor stands.
      column = wantedColumn - 1;
      return;
    }
    flush();
    if ((row > 1 || wantedColumn > 1) && !cells.areSpent()) {
      onScreen = true;
      plainLines = 0;
      screen.move(row - 1, wantedColumn - 1);
    }
  }

  private void eraseDisplay(int mode) {
    if (mode >= 2 || (onScreen && mode == 0 && screen.row() == 0 && screen.column() == 0)) {
      clear();
    } else if (onScreen) {
      screen.eraseBelow();
    } else {
      if (column == 0) {
        flush();
      }
      eraseLine(0);
    }
  }

  private void clear() {
    leaveScreen();
    flush();
    cleared = true;
  }

  private void eraseLine(int mode) {
    if (onScreen) {
      screen.eraseLine(mode);
    } else if (mode == 0) {
      if (column < line.length()) {
        line.setLength(column);
      }
    } else {
      flush();
    }
  }

  private void eraseCells(int count) {
    if (onScreen) {
      screen.eraseCells(count);
    } else if (!cells.areSpent()) {
      int end = Math.min(line.length(), column + count);
      cells.use(Math.max(end - column, 0), number);
      for (int i = column; i < end; i++) {
        line.setCharAt(i, ' ');
      }
    }
  }

  private void deleteCells(int count) {
    if (!onScreen && column < line.length() && !cells.areSpent()) {
      cells.use(line.length() - column, number);
      line.delete(column, Math.min(line.length(), column + count));
    }
  }

  private void leaveScreen() {
    if (onScreen) {
      onScreen = false;
      for (Piece piece : screen.drain()) {
        out.add(new Piece(piece.number(), piece.last(), piece.text(), cleared));
        cleared = false;
      }
      firstOfLine = out.size();
    }
    screen.reset();
  }

  private void flush() {
    if (line.length() > 0) {
      String shown = line.toString();
      if (dropped > 0) {
        shown += " [" + dropped + " more characters]";
      }
      if (!shown.equals(lastOfLine)) {
        add(shown);
        lastOfLine = shown;
      }
      line.setLength(0);
    }
    column = 0;
    dropped = 0;
  }

  private void add(String shown) {
    if (shown.isBlank()) {
      return;
    }
    if (out.size() - firstOfLine >= MOST_UPDATES) {
      // Thousands of updates of one line: the beginning and the newest are enough.
      out.remove(out.size() - 1);
    }
    out.add(new Piece(number, number, shown, cleared));
    cleared = false;
  }
}
