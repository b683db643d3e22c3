package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.decode.Decoder;
import standstill.decode.Meaning;

/** Codes are found in any line, within it and without overlap. */
class DecoderFuzzTest {
  @FuzzTest(maxDuration = "5m")
  void linesAreExplained(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentLinesAreExplained() {
    Bent.inputs(getClass(), "linesAreExplained", 500, DecoderFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    for (String line : text.split("\n", 50)) {
      int after = 0;
      for (Meaning meaning : Decoder.explain(line)) {
        assertTrue(meaning.start() >= after && meaning.end() <= line.length(), meaning + line);
        after = meaning.end();
      }
      within(Decoder.explainCode(line), line);
    }
  }

  private static void within(List<Meaning> meanings, String line) {
    for (Meaning meaning : meanings) {
      assertTrue(meaning.end() <= line.length(), meaning + line);
      assertFalse(meaning.meaning().isBlank(), meaning + line);
    }
  }
}
