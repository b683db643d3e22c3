package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import standstill.store.BaseCopy;

/** What comes from others never steers the terminal of whoever reads it. */
class HostileOutputTest {
  /** Writes to the clipboard, clears the screen, sets the title (ECMA-48; xterm's OSC 52 and 0). */
  private static final String HOSTILE = "\u001b]52;c;cm0gLXJm\u0007\u001b[2J\u009b5m\u202eevil";

  @TempDir private Path folder;

  private static void steersNothing(String printed) {
    printed
        .codePoints()
        .filter(c -> c != '\n' && c != '\t')
        .filter(
            c ->
                Character.getType(c) == Character.CONTROL
                    || Character.getType(c) == Character.FORMAT
                    || Character.getType(c) == Character.SURROGATE)
        .findFirst()
        .ifPresent(
            c -> {
              throw new AssertionError(String.format("U+%04X in: %s", c, printed));
            });
  }

  private Path hostileBase() throws Exception {
    Path kb = folder.resolve("kb");
    BaseCopy.into(kb);
    Path entry = kb.resolve("faults/root/root-id-on-no-disk.yaml");
    String json = new ObjectMapper().writeValueAsString("Evil " + HOSTILE);
    Files.writeString(
        entry, Files.readString(entry).replaceFirst("(?m)^title:.*$", "title: " + escaped(json)));
    return kb;
  }

  /** As an escape in the YAML file, which then is a file without anything odd to see. */
  private static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    for (char c : text.toCharArray()) {
      out.append(c < 0x7f ? String.valueOf(c) : String.format("\\u%04x", (int) c));
    }
    return out.toString().replace("\\", "\\\\");
  }

  @ParameterizedTest
  @ValueSource(strings = {"diagnose", "show", "search", "check"})
  void aTitleInTheBaseIsShownWithWhatItWouldDo(String command) throws Exception {
    String kb = hostileBase().toString();
    CommandRun run =
        switch (command) {
          case "diagnose" ->
              CommandRun.of("diagnose", "--base", kb, "docs/examples/wrong-root-id.log");
          case "show" -> CommandRun.of("show", "--base", kb, "root-id-on-no-disk");
          case "search" ->
              CommandRun.of(
                  "search", "--base", kb, "--index", folder.resolve("i").toString(), "evil");
          default -> CommandRun.of("check", kb);
        };
    steersNothing(run.out() + run.err());
    if (!command.equals("check")) {
      assertTrue(run.out().contains("\\u001b]52;c;"), run.out() + run.err());
    }
  }

  @Test
  void jsonHoldsTheSameTextAsEver() throws Exception {
    CommandRun run =
        CommandRun.of(
            "diagnose",
            "--json",
            "--base",
            hostileBase().toString(),
            "docs/examples/wrong-root-id.log");
    steersNothing(run.out());
    JsonNode title = new ObjectMapper().readTree(run.out()).at("/causes/0/title");
    assertEquals("Evil " + HOSTILE, title.asText());
  }

  /** systemd.journal-fields(7): SYSLOG_IDENTIFIER is whatever a program chose to call itself. */
  @Test
  void anIdentifierInAJournalIsShownWithWhatItWouldDo() throws Exception {
    StringBuilder journal = new StringBuilder();
    for (String line : Files.readAllLines(Path.of("docs/examples/emergency-mode.log"))) {
      journal
          .append("{\"SYSLOG_IDENTIFIER\":\"\\u001b]52;c;cm0gLXJm\\u0007\",\"MESSAGE\":")
          .append(new ObjectMapper().writeValueAsString(line))
          .append("}\n");
    }
    CommandRun run = CommandRun.with(journal.toString(), "diagnose", "-");
    assertEquals(0, run.code(), run.err());
    steersNothing(run.out() + run.err());
  }

  @Test
  void whatWasTypedIsRepeatedWithoutItsForce() {
    for (String[] args :
        new String[][] {
          {"--no" + HOSTILE}, {"diagnose", "/nowhere/" + HOSTILE}, {"explain", HOSTILE + " -71"}
        }) {
      CommandRun run = CommandRun.of(args);
      steersNothing(run.out() + run.err());
      assertTrue((run.out() + run.err()).contains("\\u001b]52;c;"), run.out() + run.err());
    }
  }

  /** General categories of Unicode: Cc, Cf, Zl, Zp and Cs steer; every other text passes. */
  @Test
  void everyCharacterIsEitherTextOrShown() {
    for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
      String text = "a" + Character.toString(c) + "b";
      String shown = written(text);
      boolean joiner = c == 0x200c || c == 0x200d;
      boolean passes =
          switch (Character.getType(c)) {
            case Character.CONTROL -> c == '\n' || c == '\t';
            case Character.FORMAT -> joiner;
            case Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR, Character.SURROGATE ->
                false;
            default -> c < 0xfdd0 || c > 0xfdd4;
          };
      assertEquals(passes, shown.equals(text), String.format("U+%04X: %s", c, shown));
      if (!passes) {
        assertTrue(shown.matches("a(\\\\u[0-9a-f]{4})+b"), shown);
      }
    }
  }

  private static String written(String text) {
    StringWriter to = new StringWriter();
    PrintWriter writer = new PrintWriter(new VisibleWriter(to));
    writer.print(text);
    writer.flush();
    return to.toString();
  }

  @Test
  void onlyTheProgramsOwnMarksBecomeColours() {
    Style colours = new Style(true, true);
    assertEquals("\u001b[1mtitle\u001b[0m.", written(colours.bold("title") + "."));
    assertEquals("\u001b[33m\\u001b[2J\u001b[0m", written(colours.warn("\u001b[2J")));
    assertEquals("title", written(new Style(false, true).bold("title")));
    List<String> guesses = new ArrayList<>(List.of("\ufdd0", "\ufdd0\ue000\ue000\ue000\ue000"));
    guesses.add(VisibleWriter.mark(VisibleWriter.Mark.BOLD).substring(1));
    for (String guess : guesses) {
      assertFalse(written(guess + "x").contains("\u001b"), guess);
    }
  }

  /** What libraries log goes through the same place, in whatever pieces it comes. */
  @Test
  void aStreamShowsThemToo() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = Output.stream(bytes);
    stream.println("log of \u001b[2J a library");
    stream.print("half a line \u0007");
    stream.write(0x1b);
    stream.flush();
    assertEquals(
        "log of \\u001b[2J a library" + System.lineSeparator() + "half a line \\u0007\\u001b",
        bytes.toString(Charset.defaultCharset()));
  }
}
