package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.SignForm;
import standstill.base.yaml.Loaded;
import standstill.store.BaseFolder;
import standstill.text.Problem;

/** Invented entries and logs throughout. */
class NewCommandTest {
  @TempDir private Path folder;
  private Path kb = Path.of("");
  private String log = "";

  @BeforeEach
  void writeLog() throws IOException {
    kb = SmallBase.in(folder);
    Path file = folder.resolve("boot.log");
    log = file.toString();
    Files.writeString(
        file,
        """
        [    0.000000] Linux version 6.1.0-18-amd64 (builder@example)
        [    2.100000] usb 1-4: new high-speed USB device number 2 using xhci_hcd
        [    7.200000] lantern-dock: 'bench' (c:\\x) of UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d isn't up: -110
        """);
  }

  private String run(int expected, String... arguments) {
    StringWriter out = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(out));
    String[] all =
        Stream.concat(Stream.of(arguments), Stream.of("--into", kb.toString()))
            .toArray(String[]::new);
    assertEquals(expected, commandLine.execute(all), out.toString());
    return out.toString();
  }

  private List<Problem> problems(String file) throws IOException {
    return BaseFolder.read(kb).problems().stream()
        .filter(p -> p.position().file().endsWith(file))
        .toList();
  }

  private static Path filled(Path file) throws IOException {
    String text =
        Files.readString(file)
            .replaceAll(
                "\\b(title|about|prove|undo|prevent|where|why|matters-when|text|look): ''.*",
                "$1: Invented")
            .replaceAll("(steps|unlike|how|words): \\[''\\].*", "$1: [invented]")
            .replaceAll("cautions: \\[''\\].*", "cautions: []")
            .replaceAll("minutes: ''.*", "minutes: 5")
            .replaceAll("(shows|cures|otherwise): ''.*", "$1: often")
            .replaceAll("elsewhere: ''.*", "elsewhere: never")
            .replaceAll("risk: ''.*", "risk: none")
            .replaceAll("part: ''.*", "part: disk")
            .replaceAll("how-common: ''.*", "how-common: often")
            .replaceAll("symptoms: \\[''\\].*", "symptoms: [logo-and-nothing-else]")
            .replaceAll("stages: \\[''\\].*", "stages: [root]")
            .replaceAll("by: ''}.*", "by: ada}")
            .replaceFirst("- id: ''.*", "- id: yes-it-is")
            .replaceFirst("- id: ''.*", "- id: no-it-is-not");
    return Files.writeString(file, text);
  }

  @Test
  void everyBlankOfANewFaultFailsCheckAtItsPlace() throws IOException {
    run(ExitCode.OK, "new", "fault", "dock-silent", "--from", log + ":3");
    Path file = kb.resolve("faults/devices/dock-silent.yaml");
    List<String> lines = Files.readAllLines(file);
    List<Problem> problems = problems("dock-silent.yaml");
    for (int i = 0; i < lines.size(); i++) {
      int number = i + 1;
      if (lines.get(i).contains("''  #") || lines.get(i).contains("['']")) {
        assertTrue(
            problems.stream()
                .anyMatch(p -> p.position().line() == number && p.position().column() > 1),
            "nothing reported on line " + number + ": " + lines.get(i));
      }
    }
  }

  @Test
  void aFilledSkeletonPassesWithASignThatMatchesTheLine() throws IOException {
    run(ExitCode.OK, "new", "fault", "dock-silent", "--from", log + ":3");
    filled(kb.resolve("faults/devices/dock-silent.yaml"));
    Loaded loaded = BaseFolder.read(kb);
    assertEquals(List.of(), problems("dock-silent.yaml"));
    Fault fault = loaded.base().fault("dock-silent").orElseThrow();
    String seen = fault.signs().get(0).seen().get(0);
    SignForm.OnLine form = (SignForm.OnLine) fault.signs().get(0).form();
    assertTrue(form.line().foundIn(seen), seen);
    assertTrue(form.line().foundIn(Files.readAllLines(Path.of(log)).get(2)), "the log's own line");
    assertFalse(seen.contains("0b6e1f0a"), "identifiers are not shared: " + seen);
    assertTrue(form.line().source().endsWith("isn't up: -110"), form.line().source());
  }

  @Test
  void theOtherKindsPassOnceFilled() throws IOException {
    run(ExitCode.OK, "new", "trail", "dock-slow", "--from", log + ":3");
    run(ExitCode.OK, "new", "check", "lamp-lit", "--title", "Is the lamp lit?");
    run(ExitCode.OK, "new", "symptom", "lamp-dark", "--stage", "root,devices");
    assertFalse(problems("dock-slow.yaml").isEmpty());
    assertFalse(problems("lamp-lit.yaml").isEmpty());
    assertFalse(problems("symptoms.yaml").isEmpty());
    filled(kb.resolve("trails/dock-slow.yaml"));
    filled(kb.resolve("checks/lamp-lit.yaml"));
    filled(kb.resolve("symptoms.yaml"));
    assertEquals(List.of(), BaseFolder.read(kb).problems());
    Base base = BaseFolder.read(kb).base();
    assertTrue(base.trail("dock-slow").isPresent());
    assertEquals("Is the lamp lit?", base.check("lamp-lit").orElseThrow().title());
    assertEquals(2, base.symptom("lamp-dark").orElseThrow().stages().size());
    assertTrue(base.symptom("logo-and-nothing-else").isPresent(), "the others are still there");
  }

  @Test
  void aTakenIdIsRefusedAndNothingIsOverwritten() throws IOException {
    run(ExitCode.OK, "new", "fault", "dock-silent", "--stage", "root");
    Path file = kb.resolve("faults/root/dock-silent.yaml");
    Files.writeString(file, "mine");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--stage", "root");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--stage", "devices");
    assertEquals("mine", Files.readString(file));
    Path check = Files.createDirectories(kb.resolve("checks")).resolve("lamp-lit.yaml");
    Files.writeString(check, "unfinished");
    run(ExitCode.USAGE, "new", "check", "lamp-lit");
    assertEquals("unfinished", Files.readString(check));
    run(ExitCode.USAGE, "new", "symptom", "logo-and-nothing-else");
  }

  @Test
  void whatCannotBeIsRefusedBeforeAnythingIsWritten() throws IOException {
    run(ExitCode.USAGE, "new", "fault", "../escape", "--stage", "root");
    run(ExitCode.USAGE, "new", "fault", "dock-silent");
    run(ExitCode.USAGE, "new", "fault", "--stage", "root");
    run(ExitCode.USAGE, "new", "wish", "dock-silent");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--stage", "cellar");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--stage", "root", "--set", "part=lamp");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--stage", "root", "--set", "wish=x");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--from", log + ":99");
    run(ExitCode.USAGE, "new", "fault", "dock-silent", "--from", log);
    run(ExitCode.USAGE, "new", "check", "lamp-lit", "--from", log + ":3");
    run(ExitCode.UNREADABLE, "new", "fault", "dock-silent", "--from", "nowhere.log:3");
    assertFalse(Files.exists(kb.resolve("faults")));
    assertFalse(Files.exists(kb.resolve("checks")));
  }

  @Test
  void aWrongAnswerIsAskedForAgainAndAnEmptyOneLeavesABlank() {
    StringWriter out = new StringWriter();
    Interview interview =
        new Interview(
            new BufferedReader(new StringReader("ofen\noften\n\n\n")), new PrintWriter(out));
    Question word = Question.word("shows", "chance", List.of("never", "often"));
    assertEquals(Optional.of("often"), interview.ask(word, ""));
    assertTrue(out.toString().contains("'ofen' is none of: never, often"), out.toString());
    assertEquals(Optional.empty(), interview.ask(word, ""));
    assertEquals(Optional.of("never"), interview.ask(word, "never"));
    assertEquals(Optional.empty(), interview.ask(word, ""), "the input has ended");
  }

  @Test
  void whatCannotBePrintedIsEscaped() {
    assertEquals("'it''s \\d'", Skeleton.quoted("it's \\d"));
    assertEquals("\"a\\u0007\\\"\\\\\"", Skeleton.quoted("a\u0007\"\\"));
  }
}
