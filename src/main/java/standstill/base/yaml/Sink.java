package standstill.base.yaml;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.error.Mark;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * Collects the problems of one file, with the source line and a caret. Positions count from 1 from
 * here on.
 */
final class Sink {
  private static final int WIDEST_EXCERPT = 120;

  /** Of one file; after so many nobody reads on. */
  private static final int MOST_PROBLEMS = 200;

  private final BaseText file;
  private final List<String> lines;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Position> mentions = new HashMap<>();

  Sink(BaseText file) {
    this.file = file;
    this.lines = file.text().lines().toList();
  }

  String text() {
    return file.text();
  }

  /** The file's name without folders and ending. */
  String stem() {
    return file.stem();
  }

  List<Problem> problems() {
    return problems;
  }

  boolean hasErrors() {
    return problems.stream().anyMatch(Problem::isError);
  }

  Position position(Mark mark) {
    return new Position(file.shownAs(), mark.getLine() + 1, mark.getColumn() + 1);
  }

  /** Notes where the file names something, for whoever finds that there is no such thing. */
  void mention(String kind, String name, Mark at) {
    mentions.putIfAbsent(kind + ' ' + name, position(at));
  }

  /** Where names stand, by kind and name with a blank between. */
  Map<String, Position> mentions() {
    return mentions;
  }

  void error(Mark mark, String message, String advice) {
    error(position(mark), message, advice);
  }

  void error(Position at, String message, String advice) {
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(new Problem(at, Problem.Severity.ERROR, message, excerpt(at), advice));
    }
  }

  void errorAtFile(String message, String advice) {
    problems.add(Problem.error(Position.ofFile(file.shownAs()), message, advice));
  }

  void errorAtOffset(int offset, String message, String advice) {
    String before = file.text().substring(0, Math.min(Math.max(offset, 0), file.text().length()));
    int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
    int column = before.length() - before.lastIndexOf('\n');
    error(new Position(file.shownAs(), line, column), message, advice);
  }

  private String excerpt(Position at) {
    if (at.line() < 1 || at.line() > lines.size()) {
      return "";
    }
    // A stray byte is no character that could be printed.
    String line = lines.get(at.line() - 1).replaceAll("[\\uDC00-\\uDCFF]", "\uFFFD");
    int indent = line.length() - line.stripLeading().length();
    String shown = line.substring(indent);
    int caret = at.column() - 1 - indent;
    if (shown.length() > WIDEST_EXCERPT) {
      int from = Math.max(0, Math.min(caret - WIDEST_EXCERPT / 2, shown.length() - WIDEST_EXCERPT));
      shown = shown.substring(from, from + WIDEST_EXCERPT);
      caret -= from;
    }
    return caret < 0 ? shown : shown + "\n" + " ".repeat(caret) + "^";
  }
}
