package standstill.web;

/** A request that can't be answered as it stands; the advice says what to do. */
final class NotUnderstood extends RuntimeException {
  private final String advice;

  NotUnderstood(String advice) {
    super(advice);
    this.advice = advice;
  }

  String advice() {
    return advice;
  }
}
