package standstill.store;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import standstill.report.Report;

/**
 * Pasted logs of a running server: in memory only, each under an address that can't be guessed,
 * bounded in number, size and time. What is thrown out is gone. Thread-safe.
 */
public final class Pastes {
  private static final int ADDRESS_BYTES = 16;

  private final int most;
  private final long mostLines;
  private final Duration kept;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Paste> byAddress = new LinkedHashMap<>();
  private long lines;

  private record Paste(Report report, int edition, Instant since) {}

  /**
   * An empty store.
   *
   * @param most pastes kept at the most
   * @param mostLines lines kept at the most over all pastes
   * @param kept how long a paste is kept
   */
  public Pastes(int most, long mostLines, Duration kept, Clock clock) {
    this.most = most;
    this.mostLines = mostLines;
    this.kept = kept;
    this.clock = clock;
  }

  /** Keeps a report that an edition made, and gives its address: 32 hexadecimal digits. */
  public synchronized String keep(Report report, Edition edition) {
    byte[] bytes = new byte[ADDRESS_BYTES];
    random.nextBytes(bytes);
    String address = HexFormat.of().formatHex(bytes);
    byAddress.put(address, new Paste(report, edition.number(), clock.instant()));
    lines += report.log().lineCount();
    throwOut();
    return address;
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
    Report again = edition.diagnoser().diagnose(kept.get().report().log(), 0);
    replace(address, kept.get(), new Paste(again, edition.number(), kept.get().since()));
    return Optional.of(again);
  }

  private synchronized Optional<Paste> find(String address) {
    throwOut();
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
    Paste paste = byAddress.remove(address);
    if (paste != null) {
      lines -= paste.report().log().lineCount();
    }
  }

  private void throwOut() {
    Instant oldest = clock.instant().minus(kept);
    Iterator<Paste> pastes = byAddress.values().iterator();
    int left = byAddress.size();
    while (pastes.hasNext()) {
      Paste paste = pastes.next();
      boolean last = left == 1;
      boolean over = left > most || (lines > mostLines && !last);
      if (!over && paste.since().isAfter(oldest)) {
        return;
      }
      lines -= paste.report().log().lineCount();
      left--;
      pastes.remove();
    }
  }
}
