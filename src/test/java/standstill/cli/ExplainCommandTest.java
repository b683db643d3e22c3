package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class ExplainCommandTest {
  private static String run(int expected, String... arguments) {
    StringWriter out = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(new StringWriter()));
    assertEquals(expected, commandLine.execute(arguments));
    return out.toString();
  }

  @Test
  void aCodeGetsItsReadingsAndSources() {
    String text = run(ExitCode.OK, "explain", "--", "-110");
    assertTrue(text.contains("ETIMEDOUT"), text);
    assertTrue(text.contains("source: Linux"), text);
    assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
  }

  @Test
  void aLineGetsTheMeaningsThatItsWordsTell() throws Exception {
    JsonNode all =
        new ObjectMapper()
            .readTree(
                run(
                    ExitCode.OK,
                    "explain",
                    "--json",
                    "usb 1-1: device descriptor read/64, error -71"));
    JsonNode code = all.get(0).get("codes").get(0);
    assertEquals("-71", code.get("code").asText());
    assertEquals("usb-error", code.get("kind").asText());
    assertEquals(
        "-71",
        all.get(0)
            .get("text")
            .asText()
            .substring(code.get("start").asInt(), code.get("end").asInt()));
  }

  @Test
  void anUnknownCodeIsSaidToBeUnknown() {
    assertTrue(run(ExitCode.OK, "explain", "hello").contains("no code that this program knows"));
  }

  @Test
  void withoutACodeItIsUsedWrongly() {
    run(ExitCode.USAGE, "explain");
  }
}
