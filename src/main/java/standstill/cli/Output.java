package standstill.cli;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;

/** Where a command prints to. */
final class Output {
  private Output() {}

  /**
   * The command's standard output; the process's own when the command was made outside of a command
   * line.
   */
  static PrintWriter of(@Nullable CommandSpec spec) {
    return spec == null ? new PrintWriter(System.out, true) : spec.commandLine().getOut();
  }

  /** The same for what is not a result. */
  static PrintWriter errors(@Nullable CommandSpec spec) {
    return spec == null ? new PrintWriter(System.err, true) : spec.commandLine().getErr();
  }
}
