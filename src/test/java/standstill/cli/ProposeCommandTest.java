package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Invented logs throughout. */
class ProposeCommandTest {
  private static final String BOOT =
      """
      [    0.000000] Linux version 6.1.0-18-amd64 (builder@example)
      [    1.100000] lantern-shelf: lamp 3 is warm
      [    7.200000] lantern-dock 0000:03:00.0: dock did not answer within %d s, giving up
      """;

  @TempDir private Path folder;
  private String base = "";
  private String logs = "";

  @BeforeEach
  void writeLogs() throws IOException {
    Path kb = SmallBase.in(folder);
    base = kb.toString();
    Files.createDirectories(kb.resolve("boots"));
    Files.writeString(
        kb.resolve("boots/well.log"),
        """
        [    0.000000] Linux version 6.1.0-18-amd64 (builder@example)
        [    1.100000] lantern-shelf: lamp 8 is warm
        """);
    Files.writeString(
        kb.resolve("boots/well.yaml"),
        """
        log: well.log
        label: healthy
        stage: done
        cut: whole
        made: invented
        licence: CC0-1.0
        """);
    Path unsolved = Files.createDirectories(folder.resolve("unsolved"));
    logs = unsolved.toString();
    Files.writeString(unsolved.resolve("one.log"), BOOT.formatted(5));
    Files.writeString(unsolved.resolve("note.txt"), "no boot at all");
    Files.writeString(unsolved.resolve("picture.png"), "not looked at");
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(BOOT.formatted(60).getBytes(StandardCharsets.UTF_8));
    }
    Files.write(unsolved.resolve("two.log.gz"), packed.toByteArray());
  }

  private static String run(int expected, String... arguments) {
    StringWriter out = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(out));
    assertEquals(expected, commandLine.execute(arguments), out.toString());
    return out.toString();
  }

  @Test
  void oneCandidateStandsForTheSameLineOfSeveralLogs() throws IOException {
    JsonNode root =
        new ObjectMapper().readTree(run(ExitCode.OK, "propose", logs, "--base", base, "--json"));
    assertEquals(2, root.get("logs").asInt());
    assertEquals(1, root.get("leftOut").size(), "the note is no boot log");
    assertEquals(1, root.get("healthyBoots").asInt());
    JsonNode first = root.get("candidates").get(0);
    assertEquals(2, first.get("logs").asInt());
    assertEquals(
        "lantern-dock (?P<address>[0-9a-f:.]+): dock did not answer within (?P<seconds>\\d+) s, giving up",
        first.get("pattern").asText());
    assertEquals(3, first.get("examples").get(0).get("line").asInt());
    assertEquals("seconds", first.get("captures").get(1).get("name").asText());
    assertEquals("5", first.get("captures").get(1).get("value").asText());
  }

  @Test
  void whatHealthyMachinesPrintIsMarkedAndComesLast() {
    String text = run(ExitCode.OK, "propose", logs, "--base", base);
    int dock = text.indexOf("1. lantern-dock");
    int lamp = text.indexOf("2. lantern-shelf: lamp <*> is warm");
    assertTrue(dock >= 0 && lamp > dock, text);
    assertTrue(text.contains("healthy machines print this too: 1 of 1 labelled"), text);
    assertTrue(text.contains("one.log:3"), text);
  }

  @Test
  void fewLogsAndTheTopBoundTheList() {
    assertTrue(run(ExitCode.OK, "propose", logs, "--base", base, "--top", "1").contains("1 more"));
    assertTrue(
        run(ExitCode.OK, "propose", logs, "--base", base, "--least", "3")
            .contains("no line is left"));
    run(ExitCode.USAGE, "propose", logs, "--base", base, "--least", "0");
  }

  @Test
  void whatCannotBeReadHasItsOwnExitCode() {
    run(ExitCode.UNREADABLE, "propose", folder.resolve("nowhere").toString(), "--base", base);
    run(ExitCode.UNREADABLE, "propose", base, "--base", base);
    run(ExitCode.UNREADABLE, "propose", logs + "/note.txt", "--base", base);
    run(ExitCode.USAGE, "propose");
  }
}
