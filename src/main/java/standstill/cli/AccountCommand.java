package standstill.cli;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.account.Accounts;

/** Keeps the file of those who may edit. */
@Command(
    name = "account",
    mixinStandardHelpOptions = true,
    description = {
      "Keeps the accounts of those who may edit a base on the page.",
      "Each stands in a line of a file, with a hash of its password. A change counts at once, also"
          + " for a running server."
    })
final class AccountCommand implements Runnable {
  /** Where the accounts stand. */
  static final class AccountsFile {
    @Option(
        names = "--file",
        required = true,
        paramLabel = "FILE",
        description = "File of accounts; 'account add' makes it when it is missing.")
    private @Nullable Path file;

    Path file() {
      return Objects.requireNonNull(file);
    }
  }

  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(Output.of(spec));
    }
  }

  @Command(
      name = "add",
      mixinStandardHelpOptions = true,
      description =
          "Adds an account, or gives it another password, which is asked on the terminal.")
  int add(
      @Parameters(paramLabel = "NAME", description = "Lower-case letters, digits and hyphens.")
          String name,
      @Mixin AccountsFile accounts,
      @Option(
              names = "--password-stdin",
              description = "Read the password from standard input instead of the terminal.")
          boolean fromInput) {
    if (!Accounts.isName(name)) {
      throw new Failure(
          ExitCode.USAGE,
          "'" + name + "' is not a name; use lower-case letters, digits and hyphens, at most 32");
    }
    String password = fromInput ? fromInput() : fromTerminal(name);
    if (password.length() < Accounts.SHORTEST_PASSWORD
        || password.length() > Accounts.LONGEST_PASSWORD) {
      throw new Failure(
          ExitCode.USAGE,
          "a password has "
              + Accounts.SHORTEST_PASSWORD
              + " to "
              + Accounts.LONGEST_PASSWORD
              + " characters");
    }
    try {
      Accounts.put(accounts.file(), name, password);
    } catch (IOException e) {
      throw unreadable(e);
    }
    Output.of(spec).println("The account of " + name + " is in " + accounts.file() + ".");
    return ExitCode.OK;
  }

  @Command(name = "remove", mixinStandardHelpOptions = true, description = "Takes an account away.")
  int remove(
      @Parameters(paramLabel = "NAME", description = "Name of the account.") String name,
      @Mixin AccountsFile accounts) {
    try {
      if (!Accounts.remove(accounts.file(), name)) {
        throw new Failure(ExitCode.USAGE, "no account '" + name + "' in " + accounts.file());
      }
    } catch (IOException e) {
      throw unreadable(e);
    }
    return ExitCode.OK;
  }

  @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists the names.")
  int list(@Mixin AccountsFile accounts) {
    try {
      Accounts.names(accounts.file()).forEach(Output.of(spec)::println);
    } catch (IOException e) {
      throw unreadable(e);
    }
    return ExitCode.OK;
  }

  @Command(
      name = "pass",
      mixinStandardHelpOptions = true,
      description = {
        "Prints a pass for somebody whose name is held up by others' attempts to sign in.",
        "It goes into the form for signing in, and lets the password be tried. It ends with the"
            + " password."
      })
  int pass(
      @Parameters(paramLabel = "NAME", description = "Name of the account.") String name,
      @Mixin AccountsFile accounts) {
    try {
      String pass =
          Accounts.open(accounts.file())
              .proof(name)
              .orElseThrow(
                  () ->
                      new Failure(
                          ExitCode.USAGE, "no account '" + name + "' in " + accounts.file()));
      Output.of(spec).println(pass);
    } catch (IOException e) {
      throw unreadable(e);
    }
    return ExitCode.OK;
  }

  private static Failure unreadable(IOException e) {
    return new Failure(
        ExitCode.UNREADABLE,
        e instanceof NoSuchFileException
            ? "no file: " + e.getMessage()
            : String.valueOf(e.getMessage()));
  }

  private static String fromInput() {
    try {
      BufferedReader in =
          new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
      String line = in.readLine();
      return line == null ? "" : line;
    } catch (IOException e) {
      throw unreadable(e);
    }
  }

  private static String fromTerminal(String name) {
    Console console = System.console();
    if (console == null) {
      throw new Failure(
          ExitCode.USAGE, "there is no terminal to ask for the password; use --password-stdin");
    }
    char[] first = console.readPassword("Password for %s: ", VisibleWriter.visible(name));
    char[] again = console.readPassword("The same again: ");
    if (first == null || !Arrays.equals(first, again)) {
      throw new Failure(ExitCode.USAGE, "the two passwords differ; nothing was changed");
    }
    return new String(first);
  }
}
