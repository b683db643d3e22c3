package standstill.cli;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Where the program starts, and the command that holds the others. */
@Command(
    name = "standstill",
    mixinStandardHelpOptions = true,
    version = "standstill 1.0.0",
    description = {
      "Finds out why a PC's boot stopped.",
      "",
      "Give it the text that the boot printed, whole or the last screenful, and it says how far the"
          + " boot came, what most likely stopped it, and which lines prove it.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  java -jar target/standstill.jar diagnose boot.log",
      "  journalctl -b -1 | java -jar target/standstill.jar diagnose -",
      "  java -jar target/standstill.jar walk boot.log",
      "  java -jar target/standstill.jar serve",
      "",
      "Exit codes: 0 done, 2 wrong usage, 3 input could not be read, 4 the fault base has errors.",
    },
    subcommands = {
      DiagnoseCommand.class,
      MachineCommand.class,
      ExplainCommand.class,
      WalkCommand.class,
      ServeCommand.class,
      CheckCommand.class,
      ProposeCommand.class,
      NewCommand.class,
      SchemaCommand.class,
      ScoreCommand.class,
      AccountCommand.class,
      SearchCommand.class,
      ShowCommand.class
    })
public final class Main implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  private Main() {}

  /** Runs a command and ends with its exit code. */
  public static void main(String[] args) {
    CommandLine commandLine = commandLine();
    Output.takeOver(commandLine);
    System.exit(commandLine.execute(args));
  }

  /** The command line with its one handler that turns failures into exit codes. */
  static CommandLine commandLine() {
    CommandLine commandLine = new CommandLine(new Main());
    // Help has no colours: escape codes are written by one place alone, and it is not there.
    commandLine.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    commandLine.setUsageHelpWidth(80);
    commandLine.setUsageHelpLongOptionsMaxWidth(24);
    commandLine.setExecutionExceptionHandler(
        (failure, command, parsed) -> {
          PrintWriter err = Output.errors(command);
          if (failure instanceof Failure known) {
            err.println("standstill: " + known.getMessage());
            return known.exitCode();
          }
          failure.printStackTrace(err);
          return ExitCode.INTERNAL;
        });
    CommandLine.IParameterExceptionHandler usage = commandLine.getParameterExceptionHandler();
    commandLine.setParameterExceptionHandler(
        (failure, args) -> {
          failure.getCommandLine().setErr(Output.errors(failure.getCommandLine()));
          return usage.handleParseException(failure, args);
        });
    return commandLine;
  }

  @Override
  public void run() {
    commandLine().usage(Output.of(spec));
  }
}
