package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Accounts from the command line, with the password over standard input. */
class AccountCommandTest {
  @TempDir private Path folder;

  @Test
  void accountsComeAndGo() throws Exception {
    String file = folder.resolve("accounts").toString();
    assertEquals(
        0,
        CommandRun.with(
                "a lamp in every window\n",
                "account",
                "add",
                "ada",
                "--file",
                file,
                "--password-stdin")
            .code());
    assertEquals(
        0,
        CommandRun.with(
                "three wicks and a match",
                "account",
                "add",
                "bram",
                "--file",
                file,
                "--password-stdin")
            .code());
    assertEquals(
        String.format("ada%nbram%n"), CommandRun.with("", "account", "list", "--file", file).out());
    assertEquals(0, CommandRun.with("", "account", "remove", "ada", "--file", file).code());
    assertEquals(
        String.format("bram%n"), CommandRun.with("", "account", "list", "--file", file).out());
    assertFalse(Files.readString(Path.of(file)).contains("wicks"));
  }

  @Test
  void whatIsNoAccountIsRefusedAndNoPasswordIsShown() {
    String file = folder.resolve("accounts").toString();
    CommandRun shortOne =
        CommandRun.with("lamp\n", "account", "add", "ada", "--file", file, "--password-stdin");
    assertEquals(2, shortOne.code());
    assertTrue(shortOne.err().contains("12 to 200") && !shortOne.err().contains("lamp"));
    assertEquals(
        2,
        CommandRun.with("x", "account", "add", "../ada", "--file", file, "--password-stdin")
            .code());
    assertEquals(3, CommandRun.with("", "account", "list", "--file", file).code());
    assertFalse(Files.exists(Path.of(file)));
  }

  @Test
  void editingNeedsABaseOfItsOwnAndAccounts() {
    CommandRun run = CommandRun.with("", "serve", "--edit", "--port", "0");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("--base") && run.err().contains("account add"), run.err());
    assertEquals(2, CommandRun.with("", "serve", "--accounts", "x", "--port", "0").code());
  }
}
