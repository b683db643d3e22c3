package standstill.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.store.BaseFolder;

class LineCodeTest {
  private static JsonNode codes(String log) throws Exception {
    Diagnoser diagnoser = new Diagnoser(BaseFolder.builtIn().base());
    return JsonReport.toNode(diagnoser.diagnose(log), 3).get("codes");
  }

  @Test
  void codesOfProofLinesStandInTheReport() throws Exception {
    JsonNode codes = codes(Files.readString(Path.of("docs/examples/memory-error.log")));
    List<String> found = new ArrayList<>();
    for (JsonNode code : codes) {
      found.add(code.get("code").asText());
      assertTrue(code.get("line").asInt() > 0);
      assertTrue(!code.get("kind").asText().isEmpty() && !code.get("source").asText().isEmpty());
    }
    assertTrue(found.contains("be00000000010091"), found.toString());
  }

  @Test
  void aCodeThatRepeatsIsListedOnce() throws Exception {
    StringBuilder log = new StringBuilder("[    0.000000] Linux version 6.1.0-18-amd64\n");
    for (int i = 1; i < 20; i++) {
      log.append("[   ").append(10 + i).append(".000000] foo: probe failed with error -5\n");
    }
    JsonNode codes = codes(log.toString());
    assertEquals(1, codes.size(), codes.toString());
    assertEquals(2, codes.get(0).get("line").asInt());
  }

  @Test
  void aTextThatIsNoBootLogHasNone() throws Exception {
    assertEquals(0, codes("a shopping list: 12 eggs, error -5").size());
  }
}
