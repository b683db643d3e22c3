package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.disguise.Disguise;

/** Any lines can be disguised, one for one and without growing out of measure. */
class DisguiseFuzzTest {
  @FuzzTest(maxDuration = "5m")
  void linesAreDisguised(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentLinesAreDisguised() {
    Bent.inputs(getClass(), "linesAreDisguised", 300, DisguiseFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    List<String> lines = Arrays.asList(text.split("\n", -1));
    List<String> disguised = Disguise.of(lines).apply(lines);
    assertEquals(lines.size(), disguised.size());
    int length = disguised.stream().mapToInt(String::length).sum();
    assertTrue(length <= 200 + 40 * text.length(), length + " of " + text.length());
  }
}
