package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.store.BaseFolder;

/** The walk on a terminal, with its input and output taken over. */
class WalkCommandTest {
  private static final String LOG = "docs/examples/wrong-root-id.log";

  private static final String UNSURE = "docs/examples/missing-kernel.log";

  @TempDir private Path folder;

  @Test
  void leadsFromALogToTheRepair() {
    CommandRun run = CommandRun.with("\n1\n1\n", "walk", LOG);
    assertEquals(0, run.code());
    assertTrue(run.out().contains("It worked if: "));
    assertTrue(run.out().contains("Put the right identifier on the command line"));
    assertTrue(run.out().contains("You are in; now make it hold"), run.out());
    assertTrue(run.out().contains("Repaired: "), run.out());
  }

  @Test
  void whatHelpedForOneBootIsNoRepair() {
    CommandRun run = CommandRun.with("\n1\nq\n", "walk", LOG);
    assertFalse(run.out().contains("Repaired: "), run.out());
    assertTrue(run.out().contains("Helped for one boot only"), run.out());
    assertTrue(run.out().contains("You are in; next, to make it hold: "), run.out());
  }

  @Test
  void aScreenThatStaysDarkLeadsThroughTheWalkWrittenForIt() {
    CommandRun run = CommandRun.with("1\n\n\n3\nq\n", "walk");
    assertTrue(run.out().contains("Do fans or lamps of the machine come on?"), run.out());
    assertTrue(run.out().contains("That points to: "), run.out());
    assertTrue(run.out().contains("it came to: "), run.out());
  }

  @Test
  void staysWithinEightyColumnsAndHasNoColours() {
    CommandRun run = CommandRun.with("6\n1\n\n1\nw\n1\nw\n2\nl\n6\ns\n", "walk");
    run.out()
        .lines()
        .filter(l -> !l.startsWith("> "))
        .forEach(l -> assertTrue(l.length() <= 80, l.length() + ": " + l));
    assertFalse(run.out().contains("\u001b"));
  }

  @Test
  void endOfInputEndsWithANote() {
    CommandRun run = CommandRun.with("", "walk");
    assertEquals(0, run.code());
    assertTrue(run.out().contains("Where it stands"));
  }

  @Test
  void backRestoresTheStepBefore() {
    CommandRun run = CommandRun.with("\n2\nb\nq\n", "walk", LOG);
    int first = run.out().indexOf("It worked if: ");
    assertTrue(
        run.out().indexOf("Put the right identifier on the command line for one boot", first + 1)
            > first);
    assertTrue(run.out().contains("Nothing yet."));
  }

  @Test
  void savedWalkIsResumedAsItWas() throws IOException {
    Path saved = folder.resolve("walk.json");
    CommandRun first = CommandRun.with("\n2\nq\n", "walk", "--save", saved.toString(), LOG);
    assertEquals(0, first.code(), first.err());
    String text = Files.readString(saved);
    assertTrue(text.contains("\"reply\" : \"no-help\""), text);
    assertFalse(text.contains("vmlinuz"));
    assertEquals(WalkFile.read(saved, BaseFolder.builtIn().base()).turns().size(), 1);
    Path again = folder.resolve("again.json");
    CommandRun second =
        CommandRun.with(
            "q\n", "walk", "--resume", saved.toString(), "--save", again.toString(), LOG);
    assertEquals(0, second.code(), second.err());
    assertEquals(text, Files.readString(again));
    assertTrue(second.out().contains("Step 2"));
  }

  @Test
  void whatWasTriedBeforeIsSavedAndResumed() throws IOException {
    Path saved = folder.resolve("walk.json");
    CommandRun.with("1\n2\nq\n", "walk", "--save", saved.toString(), UNSURE);
    String text = Files.readString(saved);
    assertEquals(1, WalkFile.read(saved, BaseFolder.builtIn().base()).before().size(), text);
    assertFalse(text.contains("vmlinuz"));
    Path again = folder.resolve("again.json");
    CommandRun second =
        CommandRun.with(
            "q\n", "walk", "--resume", saved.toString(), "--save", again.toString(), UNSURE);
    assertEquals(text, Files.readString(again));
    assertTrue(second.out().contains("Step 2"));
  }

  @Test
  void whatIsNoSavedWalkIsRefused() throws IOException {
    Path file = folder.resolve("x.json");
    Files.writeString(
        file, "{\"walk\": 1, \"turns\": [{\"kind\": \"check\", \"id\": \"x\", \"reply\": \"y\"}]}");
    assertEquals(
        ExitCode.UNREADABLE, CommandRun.with("", "walk", "--resume", file.toString()).code());
    Files.writeString(file, "not JSON");
    assertEquals(
        ExitCode.UNREADABLE, CommandRun.with("", "walk", "--resume", file.toString()).code());
    assertEquals(
        ExitCode.UNREADABLE,
        CommandRun.with("", "walk", "--resume", folder.resolve("none.json").toString()).code());
    assertEquals(ExitCode.USAGE, CommandRun.with("", "walk", "-").code());
  }

  @Test
  void somethingLackedIsNotAskedForAgain() {
    CommandRun run = CommandRun.with("9\n\n\nl\n1\nq\n", "walk");
    assertEquals(0, run.code(), run.err());
  }

  @Test
  void wrongInputIsAskedForAgain() {
    CommandRun run = CommandRun.with("99\nx\n6\n77\n\n\nq\n", "walk");
    assertTrue(run.out().contains("A number from 1 to 9."));
    assertTrue(run.out().contains("Numbers from 1 to"));
  }
}
