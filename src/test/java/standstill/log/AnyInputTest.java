package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever is pasted: no failure, no line lost, no number wrong. Each message names the seed. */
class AnyInputTest {
  private static final long SEED = 20_261_125L;
  private static final LogReader READER = TestForms.reader();

  private static void holds(BootLog log, String which) {
    assertEquals(log.lineCount(), log.rawLines().size(), which);
    int before = 0;
    int boot = 0;
    for (Boot b : log.boots()) {
      assertEquals(++boot, b.number(), which);
      assertTrue(!b.lines().isEmpty(), which);
      for (LogLine line : b.lines()) {
        assertTrue(line.number() >= 1 && line.lastNumber() <= log.lineCount(), which + line);
        assertTrue(line.number() <= line.lastNumber() && line.number() >= before, which + line);
        assertTrue(!line.text().isBlank(), which + line);
        assertTrue(line.text().chars().noneMatch(c -> c < ' ' || c == 0x7f), which + line);
        before = line.number();
      }
    }
  }

  @Test
  void randomBytesNeverFail() {
    Random random = new Random(SEED);
    for (int i = 0; i < 400; i++) {
      byte[] bytes = new byte[random.nextInt(3_000)];
      random.nextBytes(bytes);
      holds(READER.read(bytes), "seed " + SEED + " run " + i + " ");
    }
  }

  @Test
  void mutatedCapturesNeverFail() {
    Random random = new Random(SEED);
    for (String name : List.of("uefi-loader-kernel.log", "services-login.log", "bios-kernel.log")) {
      byte[] whole = Read.resource(name);
      for (int i = 0; i < 60; i++) {
        int from = random.nextInt(whole.length / 2);
        byte[] bytes = Arrays.copyOfRange(whole, from, from + random.nextInt(whole.length - from));
        for (int k = random.nextInt(40); k > 0 && bytes.length > 0; k--) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        holds(READER.read(bytes), name + " seed " + SEED + " run " + i + " ");
      }
    }
  }

  @Test
  void randomSequencesNeverFail() {
    Random random = new Random(SEED);
    String[] parts = {
      "\u001b[",
      "\u001b]",
      "\u001b",
      "\u009b",
      ";",
      "1",
      "79",
      "999",
      "H",
      "J",
      "K",
      "m",
      "A",
      "M",
      "2J",
      "1;1H",
      "5;3H",
      "text ",
      "[    1.234567] usb",
      "[  OK  ] x",
      "\r",
      "\n",
      "\b",
      "\t",
      "|",
      "> ",
      "&lt;",
      "<br>",
      "...",
      "{",
      "}",
      "\"MESSAGE\":",
      "\u2026",
      "0;1;31m",
      "12: ",
      "\u0007"
    };
    for (int i = 0; i < 1_500; i++) {
      StringBuilder text = new StringBuilder();
      for (int k = random.nextInt(120); k > 0; k--) {
        text.append(parts[random.nextInt(parts.length)]);
      }
      holds(READER.read(text.toString()), "seed " + SEED + " run " + i + " ");
    }
  }

  @Test
  void truncatedTwoByteTextNeverFails() {
    byte[] whole =
        new String(Read.resource("services-login.log"), StandardCharsets.UTF_8)
            .substring(0, 1_500)
            .getBytes(StandardCharsets.UTF_16);
    for (int i = 0; i < whole.length; i += 7) {
      holds(READER.read(Arrays.copyOf(whole, i)), "cut at " + i + " ");
    }
  }

  @Test
  void plainLinesAreAllKeptUnderTheirNumbers() {
    Random random = new Random(SEED);
    for (int i = 0; i < 100; i++) {
      StringBuilder text = new StringBuilder();
      int count = 1 + random.nextInt(60);
      for (int k = 0; k < count; k++) {
        text.append(
            String.format(
                java.util.Locale.ROOT,
                "[%12.6f] item %s%n",
                k / 3.0,
                "abc defgh".substring(random.nextInt(5))));
      }
      BootLog log = READER.read(text.toString());
      List<LogLine> lines = Read.lines(log);
      assertEquals(count, lines.size(), "seed " + SEED + " run " + i);
      for (int k = 0; k < count; k++) {
        assertEquals(k + 1, lines.get(k).number());
        assertEquals(log.rawLines().get(k), lines.get(k).text());
      }
    }
  }

  @Test
  void readingWhatWasReadChangesNothing() {
    for (String name : List.of("services-login.log", "bios-kernel.log")) {
      List<String> once =
          Read.lines(READER.read(Read.resource(name))).stream().map(LogLine::text).toList();
      assertEquals(once, Read.texts(String.join("\n", once)), name);
    }
  }

  @Test
  void carriageReturnsAtLineEndsChangeNothing() {
    String text =
        new String(Read.resource("services-login.log"), StandardCharsets.UTF_8).replace("\r", "");
    assertEquals(Read.texts(text), Read.texts(text.replace("\n", "\r\n")));
    assertEquals(Read.texts(text), Read.texts(text.replace("\n", "\r\r\n")));
  }

  @Test
  void hostileSizesEndInTime() {
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          holds(READER.read("\u001b[5;3Hx".repeat(100_000)), "screen ");
          holds(READER.read("a\rb\r".repeat(300_000)), "returns ");
          holds(READER.read("[".repeat(500_000)), "brackets ");
          holds(READER.read("&lt;".repeat(200_000)), "entities ");
          holds(READER.read("[1;".repeat(200_000)), "debris ");
          holds(READER.read("[    1.234567] ".repeat(20_000)), "stamps ");
          holds(READER.read("{\n".repeat(20_000)), "json ");
          holds(READER.read("\u001b]".repeat(50_000)), "commands ");
          holds(READER.read(">".repeat(200_000)), "quotes ");
        });
  }
}
