package standstill.cli;

/** Exit codes of all commands; scripts rely on them. */
final class ExitCode {
  /** Done, whatever the verdict. */
  static final int OK = 0;

  /** A fault of this program. */
  static final int INTERNAL = 1;

  /** The command was used wrongly. */
  static final int USAGE = 2;

  /** An input could not be read. */
  static final int UNREADABLE = 3;

  /** The fault base has errors. */
  static final int BASE = 4;

  private ExitCode() {}
}
