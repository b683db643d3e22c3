package standstill.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Counts attempts to sign in, per name and per address, within a span of time. An attempt counts
 * before its password is looked at, so that many at once gain nothing; one that succeeds clears the
 * count of its name. Bounded in size and thread-safe.
 */
public final class Attempts {
  private static final int PER_NAME = 10;
  private static final int PER_ADDRESS = 30;
  private static final int MOST_KEPT = 10_000;
  private static final Duration SPAN = Duration.ofMinutes(15);

  private final Clock clock;
  private final Map<String, Count> counts = new LinkedHashMap<>();

  private record Count(int number, Instant since) {}

  /** Nothing counted yet. */
  public Attempts(Clock clock) {
    this.clock = clock;
  }

  /**
   * Counts one attempt.
   *
   * @return how long to wait; zero when the attempt may go on
   */
  public synchronized Duration take(String name, String address) {
    Duration wait = count("name " + name, PER_NAME);
    Duration other = count("address " + address, PER_ADDRESS);
    return wait.compareTo(other) > 0 ? wait : other;
  }

  /** Clears the count of a name that has signed in. */
  public synchronized void succeeded(String name) {
    counts.remove("name " + name);
  }

  private Duration count(String key, int most) {
    Instant now = clock.instant();
    Count old = counts.get(key);
    if (old == null || !now.isBefore(old.since().plus(SPAN))) {
      // Taken out first, so that the oldest spans stand in front.
      counts.remove(key);
      counts.put(key, new Count(1, now));
      if (counts.size() > MOST_KEPT) {
        counts.remove(counts.keySet().iterator().next());
      }
      return Duration.ZERO;
    }
    if (old.number() >= most) {
      return Duration.between(now, old.since().plus(SPAN));
    }
    counts.put(key, new Count(old.number() + 1, old.since()));
    return Duration.ZERO;
  }
}
