package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A base of one invented fault, with the shipped scale and family. */
class CheckCommandTest {
  private static final String FAULT =
      """
      id: lamp-broken
      title: The lamp is broken
      family: [linux]
      stage: kernel
      part: disk
      how-common: often
      about: An invented fault.
      symptoms: [dark]
      signs:
        - id: lamp-is-dark
          line: 'lamp \\S+ is dark'
          shows: usually
          elsewhere: never
          seen: ['lamp a1 is dark']
          unlike: ['lamp a1 is lit']
      fixes:
        - {id: change-it, title: Change it, steps: [Do.], minutes: 5, cures: usually, risk: none, prove: Light., undo: No., cautions: []}
      prevent: Keep a spare one.
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2001-01-01, by: ada}
      """;

  @TempDir private Path base;

  @BeforeEach
  void write() throws IOException {
    for (String name : new String[] {"scale.yaml", "families/linux.yaml", "families/pc.yaml"}) {
      Path file = base.resolve(name);
      Files.createDirectories(file.getParent());
      Files.copy(Path.of("kb", name), file);
    }
    Files.writeString(
        base.resolve("symptoms.yaml"),
        "- {id: dark, title: Dark, stages: [kernel], look: Dark., reviewed: {on: 2026-01-01, by: ada}}\n");
    Files.createDirectories(base.resolve("faults/kernel"));
    fault(FAULT.getBytes(StandardCharsets.UTF_8));
  }

  private void fault(byte[] text) throws IOException {
    Files.write(base.resolve("faults/kernel/lamp-broken.yaml"), text);
  }

  private String run(int expected, String... options) {
    StringWriter out = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(new StringWriter()));
    String[] arguments = new String[options.length + 2];
    arguments[0] = "check";
    arguments[1] = base.toString();
    System.arraycopy(options, 0, arguments, 2, options.length);
    assertEquals(expected, commandLine.execute(arguments), out.toString());
    return out.toString();
  }

  @Test
  void warningsFailOnlyWhenStrict() {
    String text = run(ExitCode.OK);
    assertTrue(
        text.contains(
            "lamp-broken.yaml:1:5: warning: fault 'lamp-broken' was last reviewed on 2001"),
        text);
    assertTrue(text.endsWith("0 walks: no errors, 1 warning\n"), text);
    run(ExitCode.BASE, "--strict");
  }

  @Test
  void jsonHasPlaceSeverityRuleMessageAndAdvice() throws Exception {
    JsonNode json = new ObjectMapper().readTree(run(ExitCode.OK, "--json"));
    assertEquals(1, json.at("/faults").asInt());
    assertEquals(0, json.at("/errors").asInt());
    assertEquals(1, json.at("/warnings").asInt());
    JsonNode problem = json.at("/problems/0");
    assertTrue(problem.at("/file").asText().endsWith("faults/kernel/lamp-broken.yaml"));
    assertEquals(1, problem.at("/line").asInt());
    assertEquals(5, problem.at("/column").asInt());
    assertEquals("warning", problem.at("/severity").asText());
    assertEquals("not-reviewed", problem.at("/rule").asText());
    assertFalse(problem.at("/message").asText().isEmpty());
    assertFalse(problem.at("/advice").asText().isEmpty());
  }

  @Test
  void aFileThatIsNotUtf8IsAnErrorAtItsPlaceAndTheRestIsStillChecked() throws Exception {
    fault(FAULT.replace("spare", "\u00fcberz\u00e4hlige").getBytes(StandardCharsets.ISO_8859_1));
    String text = run(ExitCode.BASE);
    assertTrue(text.contains("lamp-broken.yaml:18:17: byte 0xFC is not UTF-8"), text);
  }

  @Test
  void labelledBootsBesideTheBaseAreLookedAtToo() throws Exception {
    fault(FAULT.replace("2001-01-01", "2026-11-01").getBytes(StandardCharsets.UTF_8));
    Files.createDirectories(base.resolve("boots"));
    Files.writeString(base.resolve("boots/one.log"), "[    0.000000] Linux version 6.1.0\n");
    Files.writeString(
        base.resolve("boots/one.yaml"),
        "{log: one.log, label: no-such-fault, stage: kernel, cut: whole, made: invented, licence: CC0-1.0}\n");
    Files.writeString(base.resolve("boots/two.log"), "x\n");
    Files.write(base.resolve("boots/three.yaml"), new byte[] {'a', ':', ' ', (byte) 0x80});
    String text = run(ExitCode.BASE);
    assertTrue(text.contains("one.yaml:1:23: unknown fault: 'no-such-fault'"), text);
    assertTrue(text.contains("two.log: log without a label"), text);
    assertTrue(text.contains("three.yaml:1:4: byte 0x80 is not UTF-8"), text);
  }

  @Test
  void schemasAreWrittenForEveryKindOfFile() throws Exception {
    StringWriter out = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    Path folder = base.resolve("new/schemas");
    assertEquals(
        ExitCode.OK,
        commandLine.execute("schema", folder.toString(), "--base", "kb"),
        out.toString());
    assertEquals(
        Files.readString(Path.of("docs/reference/schema/fault.schema.json")),
        Files.readString(folder.resolve("fault.schema.json")));
  }
}
