package standstill.cli;

/** A command can't go on, for a reason that the person can do something about. */
final class Failure extends RuntimeException {
  private final int exitCode;

  Failure(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  int exitCode() {
    return exitCode;
  }
}
