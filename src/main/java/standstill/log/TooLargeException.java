package standstill.log;

/** More bytes than whoever asked wants to hold. */
public final class TooLargeException extends Exception {
  private final long limit;

  TooLargeException(long limit) {
    super("larger than " + limit + " bytes");
    this.limit = limit;
  }

  /** The limit that was passed, in bytes. */
  public long limit() {
    return limit;
  }
}
