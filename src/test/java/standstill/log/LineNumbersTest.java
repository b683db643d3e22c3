package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every line number names the line whose text is shown. Each message names the seed. */
class LineNumbersTest {
  private static final long SEED = 20_261_130L;

  /** What happens to logs on their way; each takes the lines and gives those that are pasted. */
  enum Mutation {
    NONE((lines, random) -> lines),
    WRAPPED((lines, random) -> wrapped(lines, 60 + random.nextInt(60))),
    CUT_IN(LineNumbersTest::cutInto),
    WRAPPED_THEN_CUT_IN((lines, random) -> cutInto(wrapped(lines, 80), random)),
    CUT_IN_THEN_WRAPPED((lines, random) -> wrapped(cutInto(lines, random), 80)),
    CUT_IN_TWICE_THEN_WRAPPED(
        (lines, random) -> wrapped(cutInto(cutInto(lines, random), random), 100)),
    UPDATED_IN_PLACE(
        (lines, random) -> each(lines, random, l -> "old " + l.length() + "\r" + l + "\r\u001b[K")),
    QUOTED((lines, random) -> lines.stream().map(l -> "> " + l).toList()),
    COLOURED((lines, random) -> each(lines, random, l -> "\u001b[0;31m" + l + "\u001b[0m")),
    WITH_BLANK_LINES((lines, random) -> each(lines, random, l -> l + "\n\n")),
    DRAWN_ON_A_SCREEN(
        (lines, random) ->
            each(lines, random, l -> "\u001b[" + (2 + random.nextInt(9)) + ";1H\u001b[K" + l)),
    PASTED_FROM_A_PAGE(
        (lines, random) ->
            wrapped(each(lines, random, l -> l.replace("<", "&lt;").replace("-", "\u2013")), 90));

    private final BiFunction<List<String>, Random, List<String>> mutate;

    Mutation(BiFunction<List<String>, Random, List<String>> mutate) {
      this.mutate = mutate;
    }
  }

  private static List<String> wrapped(List<String> lines, int width) {
    List<String> out = new ArrayList<>();
    for (String line : lines) {
      for (int from = 0; from < Math.max(line.length(), 1); from += width) {
        out.add(line.substring(from, Math.min(line.length(), from + width)));
      }
    }
    return out;
  }

  /** Kernel lines that come while another line is printed stand in its middle. */
  private static List<String> cutInto(List<String> lines, Random random) {
    List<String> out = new ArrayList<>(lines);
    for (int i = 0; i < out.size(); i += 1 + random.nextInt(4)) {
      String line = out.get(i);
      int at = line.isEmpty() ? 0 : random.nextInt(line.length());
      String kernel =
          String.format(Locale.ROOT, "[%5d.%06d] sd 0:0:0:%d: cutin%dx", i, i, i, out.size() + i);
      out.set(i, line.substring(0, at) + kernel + (random.nextBoolean() ? "" : line.substring(at)));
    }
    return out;
  }

  private static List<String> each(
      List<String> lines, Random random, java.util.function.UnaryOperator<String> change) {
    String all =
        String.join(
            "\n", lines.stream().map(l -> random.nextInt(3) == 0 ? change.apply(l) : l).toList());
    return List.of(all.split("\n", -1));
  }

  /** Letters and digits that a screen showed of a raw line: what both texts must agree in. */
  private static String essence(String text) {
    String shown = text.replaceAll("\u001b\\[[0-9;:?]*[A-Za-z]", "").replaceAll("&lt;|&gt;", "");
    return shown.replaceAll("[^A-Za-z0-9]", "");
  }

  private static void holds(BootLog log, String which) {
    for (LogLine line : Read.lines(log)) {
      String rest = essence(line.text());
      String at = which + " line " + line.number() + " to " + line.lastNumber() + ": ";
      for (int n = line.number(); n <= line.lastNumber(); n++) {
        String raw = essence(log.rawLines().get(n - 1));
        int taken = rest.length();
        while (taken > 0 && !raw.contains(rest.substring(0, taken))) {
          taken--;
        }
        boolean edge = n == line.number() || n == line.lastNumber();
        assertTrue(taken > 0 || !edge || rest.isEmpty(), at + line.text() + " has nothing of " + n);
        rest = rest.substring(taken);
      }
      assertEquals("", rest, at + line.text());
    }
  }

  private static List<String> invented(Random random) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      StringBuilder line = new StringBuilder();
      if (random.nextInt(5) > 0) {
        line.append(
            String.format(Locale.ROOT, "[%5d.%06d] usb 1-%d:", i, random.nextInt(999999), i));
      } else {
        line.append("[  OK  ] Started");
      }
      for (int k = random.nextInt(25); k >= 0; k--) {
        line.append(' ').append((char) ('a' + random.nextInt(26))).append(i).append('w').append(k);
      }
      lines.add(line.toString());
    }
    return lines;
  }

  @ParameterizedTest
  @EnumSource(Mutation.class)
  void numbersNameTheLinesOfInventedLogs(Mutation mutation) {
    for (int run = 0; run < 60; run++) {
      Random random = new Random(SEED + run);
      String text = String.join("\n", mutation.mutate.apply(invented(random), random));
      holds(TestForms.reader().read(text), mutation + " seed " + SEED + "+" + run);
    }
  }

  @ParameterizedTest
  @EnumSource(Mutation.class)
  void numbersNameTheLinesOfCaptures(Mutation mutation) {
    for (String name : List.of("services-login.log", "bios-kernel.log")) {
      List<String> lines = new ArrayList<>();
      for (LogLine line :
          Read.lines(
              TestForms.reader().read(new String(Read.resource(name), StandardCharsets.UTF_8)))) {
        lines.add(line.text());
      }
      for (int run = 0; run < 4; run++) {
        Random random = new Random(SEED + run);
        String text = String.join("\n", mutation.mutate.apply(lines, random));
        holds(TestForms.reader().read(text), name + " " + mutation + " seed " + SEED + "+" + run);
      }
    }
  }

  @Test
  void aLineCutIntoAWrappedOneHasItsOwnNumber() {
    String first = "[    1.000001] EXT4-fs error (device sda1): " + "word ".repeat(8).strip();
    String text =
        first.substring(0, 60)
            + "\n"
            + first.substring(60)
            + "\n"
            + first.substring(0, 60)
            + "\n"
            + first.substring(60)
            + "\n"
            + first.substring(0, 60)
            + "\nwor[    1.000002] sd 0:0:0:0: [sda] Stopped\n";
    List<LogLine> lines = Read.lines(text);
    LogLine cutIn = lines.get(lines.size() - 1);
    assertEquals("sd 0:0:0:0: [sda] Stopped", cutIn.message());
    assertEquals(6, cutIn.number());
    assertEquals(6, cutIn.lastNumber());
    LogLine above = lines.get(lines.size() - 2);
    assertEquals(5, above.number());
    assertEquals(6, above.lastNumber());
  }

  @Test
  void aStatusLineThatIsDrawnAgainHasTheNumberOfTheLastDrawing() {
    String job = "A start job is running for the disk that nobody plugged in";
    List<LogLine> lines =
        Read.lines(
            "\u001b[5;1H"
                + job
                + " (1s)\n\u001b[5;1H"
                + job
                + " (2s)\n\u001b[5;1H"
                + job
                + " (3s)\n");
    assertEquals(1, lines.size());
    assertEquals(job + " (3s)", lines.get(0).text());
    assertEquals(3, lines.get(0).number());
    assertEquals(3, lines.get(0).lastNumber());
  }

  @Test
  void aRowThatIsDrawnAgainInPartStandsOnTheLinesThatDrewIt() {
    List<LogLine> lines = Read.lines("\u001b[5;1HBooting in 5 seconds\nnoise\u001b[5;12H4\n");
    LogLine row =
        lines.stream().filter(l -> l.text().startsWith("Booting")).findFirst().orElseThrow();
    assertEquals("Booting in 4 seconds", row.text());
    assertEquals(1, row.number());
    assertEquals(2, row.lastNumber());
  }

  @Test
  void aRowThatIsDrawnAgainAsItWasKeepsItsNumber() {
    List<LogLine> lines = Read.lines("\u001b[5;1HPress any key\n\u001b[5;1HPress any key\n");
    assertEquals(1, lines.size());
    assertEquals(1, lines.get(0).number());
    assertEquals(1, lines.get(0).lastNumber());
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"MESSAGE\" : \"usb 1-1: x\"", "\"MESSAGE\":\"usb 1-1: x\""})
  void anEntryInJsonHasTheNumberOfItsMessage(String message) {
    LogLine line = Read.lines("{\n\t\"PRIORITY\" : \"6\",\n\t" + message + "\n}\n").get(0);
    assertEquals(3, line.number());
  }
}
