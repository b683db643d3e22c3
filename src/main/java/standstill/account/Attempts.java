package standstill.account;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.LongSupplier;

/**
 * Counts attempts to sign in within a span of time that ends now.
 *
 * <p>Strangers have 10 attempts on a name altogether, of which one address has 5, so that one
 * address can't use up a name for the others. A device on which the name has signed in before, and
 * can prove it, has 10 of its own that no stranger can use up. So a name's password is guessed at
 * no more than 10 times however many ask from wherever, and its owner still gets in.
 *
 * <p>An attempt counts before its password is looked at, so that many at once gain nothing; one
 * that succeeds doesn't count; one that is refused doesn't either, and leaves nothing behind. What
 * is counted for a name of an account is never thrown out before its time. Bounded and thread-safe.
 */
public final class Attempts {
  private static final int ON_NAME = 10;
  private static final int ON_NAME_FROM_ADDRESS = 5;
  private static final int FROM_ADDRESS = 30;
  private static final int FROM_DEVICE = 10;
  private static final int MOST_KEPT = 10_000;
  private static final int UNKNOWN_NAMES = 256;
  private static final Duration SPAN = Duration.ofMinutes(15);

  private final LongSupplier nanos;
  private final int salt = ThreadLocalRandom.current().nextInt();

  /** Strangers' attempts on the names of accounts, of which there are not many. */
  private final Map<String, Deque<Attempt>> onNames = new LinkedHashMap<>();

  /** Attempts by address and by device; whose time is longest ago is thrown out first. */
  private final Map<String, Deque<Attempt>> others = new LinkedHashMap<>();

  private record Attempt(long at, String address) {}

  /** One count that an attempt goes into: where it stands, whose of it count, and the most. */
  private record Count(
      Map<String, Deque<Attempt>> in, String key, String address, int most, boolean ofAddress) {}

  /**
   * Who tries to sign in.
   *
   * @param name of the account that is asked for
   * @param known whether there is such an account
   * @param address that it comes from
   * @param device that has proved that the name signed in on it before
   */
  public record Who(String name, boolean known, String address, Optional<String> device) {}

  /**
   * Nothing counted yet.
   *
   * @param nanos a clock that nobody sets, in nanoseconds
   */
  public Attempts(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /**
   * Counts one attempt.
   *
   * @return how long to wait; zero when the attempt may go on
   */
  public synchronized Duration take(Who who) {
    long now = nanos.getAsLong();
    throwOutOld(onNames, now);
    throwOutOld(others, now);
    List<Count> counts = counts(who);
    long wait = 0;
    for (Count count : counts) {
      wait = Math.max(wait, wait(count, now));
    }
    if (wait > 0) {
      return Duration.ofNanos(wait);
    }
    Attempt attempt = new Attempt(now, who.address());
    for (Count count : counts) {
      if (!count.ofAddress()) {
        Deque<Attempt> all = count.in().remove(count.key());
        all = all == null ? new ArrayDeque<>() : all;
        all.addLast(attempt);
        // Taken out first, so that the oldest stand in front.
        count.in().put(count.key(), all);
      }
    }
    if (others.size() > MOST_KEPT) {
      others.remove(others.keySet().iterator().next());
    }
    return Duration.ZERO;
  }

  /** Takes back the count of an attempt that succeeded. */
  public synchronized void succeeded(Who who) {
    for (Count count : counts(who)) {
      Deque<Attempt> all = count.in().get(count.key());
      if (all != null && !count.ofAddress()) {
        Iterator<Attempt> latest = all.descendingIterator();
        while (latest.hasNext()) {
          if (latest.next().address().equals(who.address())) {
            latest.remove();
            break;
          }
        }
      }
    }
  }

  private List<Count> counts(Who who) {
    List<Count> counts = new ArrayList<>();
    if (who.device().isPresent()) {
      String key = "device " + who.name() + " " + who.device().get();
      counts.add(new Count(others, key, who.address(), FROM_DEVICE, false));
      return counts;
    }
    // Names that are no accounts share a few counts, so that asking for many of them fills nothing;
    // one of them alone is counted as an account's is, so that the answers tell nothing.
    String name =
        who.known()
            ? who.name()
            : "? " + Math.floorMod(Objects.hash(salt, who.name()), UNKNOWN_NAMES);
    counts.add(new Count(onNames, name, who.address(), ON_NAME, false));
    counts.add(new Count(onNames, name, who.address(), ON_NAME_FROM_ADDRESS, true));
    counts.add(new Count(others, "address " + who.address(), who.address(), FROM_ADDRESS, false));
    return counts;
  }

  private static long wait(Count count, long now) {
    Deque<Attempt> all = count.in().get(count.key());
    if (all == null) {
      return 0;
    }
    List<Attempt> mine =
        all.stream()
            .filter(a -> !count.ofAddress() || a.address().equals(count.address()))
            .toList();
    return mine.size() < count.most() ? 0 : mine.get(0).at() + SPAN.toNanos() - now;
  }

  private static void throwOutOld(Map<String, Deque<Attempt>> counts, long now) {
    counts.values().forEach(all -> all.removeIf(a -> now - a.at() >= SPAN.toNanos()));
    counts.values().removeIf(Deque::isEmpty);
  }
}
