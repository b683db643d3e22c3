package standstill.account;

import java.time.Duration;

/** A clock that goes when it is told to; it begins shortly before its number overflows. */
final class TestClock {
  private long nanos = Long.MAX_VALUE - 1_000;

  void pass(Duration time) {
    nanos += time.toNanos();
  }

  long nanos() {
    return nanos;
  }
}
