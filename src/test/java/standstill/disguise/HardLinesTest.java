package standstill.disguise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Lines that hide identifiers well, by sort, with what must not be left and what must. */
class HardLinesTest {
  private static final String NEXT_LINE = "\u2424";

  private record Row(String sort, List<String> lines, List<String> gone, List<String> kept) {}

  private static List<Row> rows() throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    HardLinesTest.class.getResourceAsStream("/disguise/hard-lines.tsv")),
                StandardCharsets.UTF_8))) {
      return reader
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(
              line -> {
                String[] f = line.split("\t", -1);
                return new Row(f[0], List.of(f[1].split(NEXT_LINE)), parts(f[2]), parts(f[3]));
              })
          .toList();
    }
  }

  private static List<String> parts(String field) {
    return Arrays.stream(field.split("\\|")).filter(p -> !p.isEmpty()).toList();
  }

  private static String shown(Row row) {
    return String.join("\n", Disguise.of(row.lines()).apply(row.lines()));
  }

  @Test
  void noIdentifierOfAnySortIsLeft() throws IOException {
    List<Row> rows = rows();
    assertTrue(rows.size() >= 200, "only " + rows.size() + " lines");
    Map<String, int[]> leaks = new TreeMap<>();
    List<String> left = new ArrayList<>();
    for (Row row : rows) {
      String shown = shown(row).toLowerCase(Locale.ROOT);
      int[] count = leaks.computeIfAbsent(row.sort(), s -> new int[2]);
      for (String secret : row.gone()) {
        count[1]++;
        if (shown.contains(secret.toLowerCase(Locale.ROOT))) {
          count[0]++;
          left.add(row.sort() + ": '" + secret + "' in " + shown(row));
        }
      }
    }
    StringBuilder rates = new StringBuilder();
    leaks.forEach((sort, n) -> rates.append(sort + " " + n[0] + "/" + n[1] + ", "));
    assertEquals("", String.join("\n", left), "left over by sort: " + rates);
  }

  @Test
  void whatTellsTheFaultStays() throws IOException {
    List<String> lost = new ArrayList<>();
    for (Row row : rows()) {
      String shown = shown(row);
      for (String part : row.kept()) {
        if (!shown.contains(part)) {
          lost.add(row.sort() + ": '" + part + "' in " + shown);
        }
      }
    }
    assertEquals("", String.join("\n", lost));
  }

  @Test
  void disguisingTwiceChangesNothingMore() throws IOException {
    List<String> changed = new ArrayList<>();
    for (Row row : rows()) {
      List<String> once = Disguise.of(row.lines()).apply(row.lines());
      List<String> twice = Disguise.of(once).apply(once);
      if (!once.equals(twice)) {
        changed.add(once + " became " + twice);
      }
    }
    assertEquals("", String.join("\n", changed));
  }
}
