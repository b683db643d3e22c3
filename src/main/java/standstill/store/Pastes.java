package standstill.store;

import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import standstill.report.Report;

/**
 * Pasted logs of a running server: in memory only, each under an address that can't be guessed,
 * bounded in number, in bytes that they hold and in time, and each client's share of these too. The
 * oldest is thrown out first: the client's own when it has more than its share, anybody's when all
 * are too many. What is thrown out is gone. Thread-safe.
 */
public final class Pastes {
  private static final int ADDRESS_BYTES = 16;

  /** One client holds at most this part of the number and of the bytes. */
  private static final int SHARE = 4;

  private final int most;
  private final long mostBytes;
  private final Duration kept;
  private final LongSupplier nanos;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Paste> byAddress = new LinkedHashMap<>();

  private record Paste(Report report, int edition, long since, String client, long bytes) {}

  /**
   * An empty store.
   *
   * @param most pastes kept at the most
   * @param mostBytes bytes held at the most over all pastes, texts and reports
   * @param kept how long a paste is kept
   * @param nanos a clock that nobody sets, in nanoseconds
   */
  public Pastes(int most, long mostBytes, Duration kept, LongSupplier nanos) {
    this.most = most;
    this.mostBytes = mostBytes;
    this.kept = kept;
    this.nanos = nanos;
  }

  /** The bytes that suit this program's memory: a quarter of it. */
  public static long usualBytes() {
    return Runtime.getRuntime().maxMemory() / 4;
  }

  /**
   * Keeps a report that an edition made, and gives its address: 32 hexadecimal digits.
   *
   * @param client who sent the log
   * @return empty, and nothing is kept, when it alone takes more than all may
   */
  public Optional<String> keep(Report report, Edition edition, String client) {
    byte[] bits = new byte[ADDRESS_BYTES];
    random.nextBytes(bits);
    String address = HexFormat.of().formatHex(bits);
    long bytes = Weight.of(report);
    if (bytes > mostBytes) {
      return Optional.empty();
    }
    synchronized (this) {
      byAddress.put(address, new Paste(report, edition.number(), nanos.getAsLong(), client, bytes));
      throwOut(client);
    }
    return Optional.of(address);
  }

  /**
   * The report at an address; empty when it never was or is gone. A report that another edition
   * made is made anew, because its causes may not be in the base any more; the log stays as it was
   * read.
   */
  public Optional<Report> get(String address, Edition edition) {
    Optional<Paste> kept = find(address);
    if (kept.isEmpty() || kept.get().edition() == edition.number()) {
      return kept.map(Paste::report);
    }
    Paste old = kept.get();
    Report again = edition.diagnoser().diagnose(old.report().log(), 0);
    replace(
        address,
        old,
        new Paste(again, edition.number(), old.since(), old.client(), Weight.of(again)));
    return Optional.of(again);
  }

  private synchronized Optional<Paste> find(String address) {
    throwOutOld();
    return Optional.ofNullable(byAddress.get(address));
  }

  /** Keeps the newest edition's report; does nothing when the paste was forgotten meanwhile. */
  private synchronized void replace(String address, Paste old, Paste with) {
    if (with.edition() > old.edition()) {
      byAddress.replace(address, old, with);
    }
  }

  /** Forgets a paste at once. */
  public synchronized void forget(String address) {
    byAddress.remove(address);
  }

  /** How many bytes the pastes hold. */
  public synchronized long bytes() {
    return byAddress.values().stream().mapToLong(Paste::bytes).sum();
  }

  private void throwOutOld() {
    long now = nanos.getAsLong();
    byAddress.values().removeIf(paste -> now - paste.since() >= kept.toNanos());
  }

  private void throwOut(String client) {
    throwOutOld();
    long own = 0;
    long ownBytes = 0;
    for (Paste paste : byAddress.values()) {
      if (paste.client().equals(client)) {
        own++;
        ownBytes += paste.bytes();
      }
    }
    long allBytes = bytes();
    Iterator<Paste> pastes = byAddress.values().iterator();
    while (pastes.hasNext() && own > 1) {
      Paste paste = pastes.next();
      if (own <= most / SHARE && ownBytes <= mostBytes / SHARE) {
        break;
      }
      if (paste.client().equals(client)) {
        pastes.remove();
        own--;
        ownBytes -= paste.bytes();
        allBytes -= paste.bytes();
      }
    }
    pastes = byAddress.values().iterator();
    while (byAddress.size() > 1 && (byAddress.size() > most || allBytes > mostBytes)) {
      allBytes -= pastes.next().bytes();
      pastes.remove();
    }
  }
}
