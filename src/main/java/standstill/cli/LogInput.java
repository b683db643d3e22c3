package standstill.cli;

import java.io.PrintWriter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import standstill.log.BootLog;
import standstill.report.Diagnoser;

/** The log of a command and the boot in it that is meant. */
final class LogInput {
  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      defaultValue = "-",
      description = "The log; - or nothing reads standard input.")
  private String file = "-";

  @Option(
      names = "--boot",
      paramLabel = "N",
      defaultValue = "0",
      description =
          "Which boot to look at when the log holds several, from 1; the last when left out.")
  private int boot;

  /** Refuses a number that no boot can have, before anything is read. */
  void check() {
    if (boot < 0) {
      throw new Failure(ExitCode.USAGE, "--boot counts from 1");
    }
  }

  /**
   * The log's bytes.
   *
   * @param err where it is said that a compressed log is damaged
   */
  byte[] bytes(PrintWriter err) {
    return DiagnoseCommand.InputFile.read(file, err);
  }

  /** Reads the log; one without the boot that was asked for is refused. */
  BootLog read(byte[] bytes, Diagnoser diagnoser) {
    BootLog log = diagnoser.read(bytes);
    if (boot > log.boots().size()) {
      throw new Failure(
          ExitCode.USAGE, "no boot " + boot + " in this log; it has " + log.boots().size());
    }
    return log;
  }

  /** Number of the boot from 1; 0 for the last one that stopped. */
  int boot() {
    return boot;
  }
}
