package standstill.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import standstill.edit.LineDiff;
import standstill.edit.ThreeTexts;

/**
 * Two texts line by line, ready for their template.
 *
 * @param rows empty when they are the same
 */
public record DiffView(List<RowView> rows) {
  private static final int AROUND = 4;

  /**
   * A row.
   *
   * @param kind {@code kept}, {@code out}, {@code in} or {@code gap}
   * @param number of the line, in the text that has it
   * @param text the line
   */
  public record RowView(String kind, String number, String text) {}

  static DiffView of(String before, String after) {
    List<RowView> rows = new ArrayList<>();
    for (LineDiff.Row row : LineDiff.of(before, after)) {
      rows.add(
          switch (row.change()) {
            case KEPT -> new RowView("kept", Integer.toString(row.after()), row.text());
            case GONE -> new RowView("out", Integer.toString(row.before()), row.text());
            case NEW -> new RowView("in", Integer.toString(row.after()), row.text());
            case LEFT_OUT -> gap(Integer.parseInt(row.text()));
          });
    }
    return new DiffView(rows);
  }

  /** A text of a conflict, with the lines that are its own. */
  public record ColumnView(String title, String hint, List<RowView> rows) {}

  static List<ColumnView> columns(ThreeTexts texts) {
    Set<Integer> given = new TreeSet<>(LineDiff.newLines(texts.base(), texts.common()));
    given.addAll(LineDiff.newLines(texts.proposed(), texts.common()));
    return List.of(
        column("In the base now", "Changed meanwhile", texts.base(), texts.common()),
        new ColumnView(
            "Where both set out from",
            "Lines that one of them changed are marked",
            rows(texts.common(), given)),
        column("This proposal", "Changed here", texts.proposed(), texts.common()));
  }

  private static ColumnView column(String title, String hint, String text, String common) {
    return new ColumnView(
        title, hint + ": the marked lines", rows(text, LineDiff.newLines(common, text)));
  }

  /** The marked lines with some around them. */
  private static List<RowView> rows(String text, Set<Integer> marked) {
    List<RowView> rows = new ArrayList<>();
    int number = 0;
    int leftOut = 0;
    for (String line : text.lines().toList()) {
      number++;
      if (far(number, marked)) {
        leftOut++;
        continue;
      }
      gap(rows, leftOut);
      leftOut = 0;
      rows.add(
          new RowView(marked.contains(number) ? "own" : "kept", Integer.toString(number), line));
    }
    gap(rows, leftOut);
    return rows;
  }

  private static boolean far(int number, Set<Integer> marked) {
    return marked.stream().noneMatch(m -> Math.abs(m - number) <= AROUND);
  }

  private static void gap(List<RowView> rows, int lines) {
    if (lines > 0) {
      rows.add(gap(lines));
    }
  }

  private static RowView gap(int lines) {
    return new RowView("gap", "", lines + (lines == 1 ? " line" : " lines") + " as before");
  }
}
