package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LineDiffTest {
  @Test
  void aChangedLineStandsBetweenThreeOthers() {
    List<LineDiff.Row> rows =
        LineDiff.of("a\nb\nc\nd\ne\nf\ng\nh\ni\n", "a\nb\nc\nd\nE\nf\ng\nh\ni\n");
    assertEquals(
        List.of(
            "LEFT_OUT 1",
            "KEPT b",
            "KEPT c",
            "KEPT d",
            "GONE e",
            "NEW E",
            "KEPT f",
            "KEPT g",
            "KEPT h",
            "LEFT_OUT 1"),
        rows.stream().map(r -> r.change() + " " + r.text()).toList());
    assertEquals(List.of(5, 0), List.of(rows.get(4).before(), rows.get(4).after()));
    assertEquals(List.of(0, 5), List.of(rows.get(5).before(), rows.get(5).after()));
    assertEquals(List.of(), LineDiff.of("a\n", "a\n"));
    assertEquals(Set.of(5), LineDiff.newLines("a\nb\nc\nd\ne\n", "a\nb\nc\nd\nE\n"));
  }

  @Test
  void theRowsTellBothTextsWhole() {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    for (int i = 0; i < 300; i++) {
      List<String> a = lines(random);
      List<String> b = new ArrayList<>(a);
      for (int j = random.nextInt(6); j > 0; j--) {
        int at = random.nextInt(b.size() + 1);
        if (random.nextBoolean() && at < b.size()) {
          b.remove(at);
        } else {
          b.add(at, "new " + random.nextInt(5));
        }
      }
      List<LineDiff.Row> rows = LineDiff.of(text(a), text(b));
      for (LineDiff.Row row : rows) {
        if (row.before() > 0) {
          assertEquals(a.get(row.before() - 1), row.text(), "seed " + seed);
        }
        if (row.after() > 0) {
          assertEquals(b.get(row.after() - 1), row.text(), "seed " + seed);
        }
      }
      int before = 0;
      int after = 0;
      for (LineDiff.Row row : rows) {
        int left = row.change() == LineDiff.Change.LEFT_OUT ? Integer.parseInt(row.text()) : 0;
        before += left + (row.before() > 0 ? 1 : 0);
        after += left + (row.after() > 0 ? 1 : 0);
      }
      assertTrue(
          rows.isEmpty() ? a.equals(b) : before == a.size() && after == b.size(), "seed " + seed);
    }
  }

  private static List<String> lines(Random random) {
    List<String> lines = new ArrayList<>();
    for (int i = random.nextInt(30); i >= 0; i--) {
      lines.add("line " + random.nextInt(8));
    }
    return lines;
  }

  private static String text(List<String> lines) {
    return lines.isEmpty() ? "" : String.join("\n", lines) + "\n";
  }

  @Test
  void whatDoesNotClashIsMergedAndWhatDoesStandsBetweenMarks() throws Exception {
    String common = "a\nb\nc\nd\ne\nf\ng\n";
    String merged =
        LineDiff.merge(
            common, common.replace("a", "A").replace("e", "E1"), common.replace("e", "E2"));
    assertTrue(
        merged.startsWith("A\nb\nc\nd\n<<<<<<< in the base\nE1\n=======\nE2\n>>>>>>> proposed\nf"),
        merged);
  }
}
