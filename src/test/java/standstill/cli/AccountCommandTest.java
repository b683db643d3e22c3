package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Accounts from the command line, with the password over standard input. */
class AccountCommandTest {
  @TempDir private Path folder;

  private record Run(int code, String out, String err) {}

  private static Run run(String input, String... args) {
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
    try {
      CommandLine commandLine = Main.commandLine();
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      commandLine.setOut(new PrintWriter(out));
      commandLine.setErr(new PrintWriter(err));
      int code = commandLine.execute(args);
      return new Run(code, out.toString(), err.toString());
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void accountsComeAndGo() throws Exception {
    String file = folder.resolve("accounts").toString();
    assertEquals(
        0,
        run("a lamp in every window\n", "account", "add", "ada", "--file", file, "--password-stdin")
            .code());
    assertEquals(
        0,
        run("three wicks and a match", "account", "add", "bram", "--file", file, "--password-stdin")
            .code());
    assertEquals(String.format("ada%nbram%n"), run("", "account", "list", "--file", file).out());
    assertEquals(0, run("", "account", "remove", "ada", "--file", file).code());
    assertEquals(String.format("bram%n"), run("", "account", "list", "--file", file).out());
    assertFalse(Files.readString(Path.of(file)).contains("wicks"));
  }

  @Test
  void whatIsNoAccountIsRefusedAndNoPasswordIsShown() {
    String file = folder.resolve("accounts").toString();
    Run shortOne = run("lamp\n", "account", "add", "ada", "--file", file, "--password-stdin");
    assertEquals(2, shortOne.code());
    assertTrue(shortOne.err().contains("12 to 200") && !shortOne.err().contains("lamp"));
    assertEquals(
        2, run("x", "account", "add", "../ada", "--file", file, "--password-stdin").code());
    assertEquals(3, run("", "account", "list", "--file", file).code());
    assertFalse(Files.exists(Path.of(file)));
  }

  @Test
  void editingNeedsABaseOfItsOwnAndAccounts() {
    Run run = run("", "serve", "--edit", "--port", "0");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("--base") && run.err().contains("account add"), run.err());
    assertEquals(2, run("", "serve", "--accounts", "x", "--port", "0").code());
  }
}
