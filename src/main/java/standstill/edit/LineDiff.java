package standstill.edit;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.jgit.diff.Edit;
import org.eclipse.jgit.diff.EditList;
import org.eclipse.jgit.diff.HistogramDiff;
import org.eclipse.jgit.diff.RawText;
import org.eclipse.jgit.diff.RawTextComparator;
import org.eclipse.jgit.merge.MergeAlgorithm;
import org.eclipse.jgit.merge.MergeFormatter;
import org.eclipse.jgit.merge.MergeResult;

/** Two texts compared line by line. */
public final class LineDiff {
  private static final int AROUND = 3;

  private LineDiff() {}

  /** What became of a line. */
  public enum Change {
    /** It stands in both. */
    KEPT,
    /** It is gone. */
    GONE,
    /** It is new. */
    NEW,
    /** Lines that stand in both are left out here. */
    LEFT_OUT
  }

  /**
   * A row of a comparison.
   *
   * @param change what became of the line
   * @param before its number in the first text, from 1; 0 when it is not there
   * @param after its number in the second text, from 1; 0 when it is not there
   * @param text the line; for {@link Change#LEFT_OUT} how many there are
   */
  public record Row(Change change, int before, int after, String text) {}

  /** The changed lines with three around them; empty when the texts are the same. */
  public static List<Row> of(String before, String after) {
    RawText a = raw(before);
    RawText b = raw(after);
    EditList edits = new HistogramDiff().diff(RawTextComparator.DEFAULT, a, b);
    List<Row> rows = new ArrayList<>();
    int from = 0;
    int shift = 0;
    for (int i = 0; i < edits.size(); i++) {
      Edit edit = edits.get(i);
      int first = Math.max(from, edit.getBeginA() - AROUND);
      leftOut(rows, first - from);
      kept(rows, a, first, edit.getBeginA(), shift);
      for (int line = edit.getBeginA(); line < edit.getEndA(); line++) {
        rows.add(new Row(Change.GONE, line + 1, 0, a.getString(line)));
      }
      for (int line = edit.getBeginB(); line < edit.getEndB(); line++) {
        rows.add(new Row(Change.NEW, 0, line + 1, b.getString(line)));
      }
      shift = edit.getEndB() - edit.getEndA();
      int next = i + 1 < edits.size() ? edits.get(i + 1).getBeginA() : a.size();
      from = Math.min(next, edit.getEndA() + AROUND);
      kept(rows, a, edit.getEndA(), from, shift);
    }
    if (!rows.isEmpty()) {
      leftOut(rows, a.size() - from);
    }
    return rows;
  }

  /** Numbers of the lines of the second text, from 1, that the first does not have there. */
  public static Set<Integer> newLines(String before, String after) {
    Set<Integer> lines = new TreeSet<>();
    for (Edit edit : new HistogramDiff().diff(RawTextComparator.DEFAULT, raw(before), raw(after))) {
      for (int line = edit.getBeginB(); line < edit.getEndB(); line++) {
        lines.add(line + 1);
      }
    }
    return lines;
  }

  /** Two descendants of a text merged; places that clash hold both, between marks. */
  static String merge(String common, String base, String proposed) throws IOException {
    MergeResult<RawText> merged =
        new MergeAlgorithm()
            .merge(RawTextComparator.DEFAULT, raw(common), raw(base), raw(proposed));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new MergeFormatter()
        .formatMerge(
            out, merged, List.of("common", "in the base", "proposed"), StandardCharsets.UTF_8);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static RawText raw(String text) {
    return new RawText(text.getBytes(StandardCharsets.UTF_8));
  }

  private static void kept(List<Row> rows, RawText a, int from, int to, int shift) {
    for (int line = from; line < to; line++) {
      rows.add(new Row(Change.KEPT, line + 1, line + 1 + shift, a.getString(line)));
    }
  }

  private static void leftOut(List<Row> rows, int lines) {
    if (lines > 0) {
      rows.add(new Row(Change.LEFT_OUT, 0, 0, Integer.toString(lines)));
    }
  }
}
