package standstill.log;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Puts the lines of one boot on one clock.
 *
 * <p>The kernel's seconds are taken as they are. Calendar stamps become seconds since the first
 * stamp, or fall in with the kernel's seconds as soon as a line has both. A calendar may be set
 * while the machine starts; a jump back, or one by more than a month, is taken for that and not for
 * silence.
 */
final class Times {
  private static final double MONTH = 31 * 86_400.0;
  private static final double YEAR = 366 * 86_400.0;
  private static final double BACK = 60;

  private double zero = Double.NaN;
  private double years;
  private double lastClock = Double.NaN;
  private double last;

  private Times() {}

  static Boot boot(int number, List<Entry> entries, boolean followed) {
    Times times = new Times();
    times.calibrate(entries);
    List<LogLine> lines = new ArrayList<>(entries.size());
    List<Integer> cuts = new ArrayList<>();
    for (Entry entry : entries) {
      Piece piece = entry.piece();
      if (entry.afterCut()) {
        cuts.add(piece.number());
      }
      lines.add(
          new LogLine(
              piece.number(),
              piece.last(),
              piece.text(),
              entry.message(),
              times.seconds(entry.prefix()),
              entry.prefix().level(),
              entry.prefix().process()));
    }
    return new Boot(number, lines, cuts, followed);
  }

  private void calibrate(List<Entry> entries) {
    for (Entry entry : entries) {
      Prefix prefix = entry.prefix();
      boolean both = prefix.seconds().isPresent() && !prefix.since();
      if (both && !Double.isNaN(prefix.clock())) {
        zero = prefix.clock() - prefix.seconds().getAsDouble();
        return;
      }
    }
  }

  private OptionalDouble seconds(Prefix prefix) {
    if (prefix.seconds().isPresent()) {
      double own = prefix.seconds().getAsDouble();
      last = prefix.since() ? last + own : own;
      follow(prefix.clock());
      return OptionalDouble.of(rounded(last));
    }
    if (Double.isNaN(prefix.clock())) {
      return OptionalDouble.empty();
    }
    double clock = follow(prefix.clock());
    last = clock - zero;
    return OptionalDouble.of(rounded(last));
  }

  /** The calendar with missing years filled in, and the zero moved when it was set. */
  private double follow(double stamp) {
    if (Double.isNaN(stamp)) {
      return stamp;
    }
    double clock = stamp + years;
    boolean yearless = stamp < Clock.NO_YEAR && stamp > Clock.NO_YEAR - 2 * YEAR;
    if (yearless && clock < lastClock - YEAR / 2) {
      years += YEAR;
      clock += YEAR;
    }
    if (Double.isNaN(zero)) {
      zero = clock - last;
    }
    if (clock < lastClock - BACK || clock > lastClock + MONTH) {
      zero = clock - last;
    }
    lastClock = clock;
    return clock;
  }

  private static double rounded(double seconds) {
    return Math.rint(seconds * 1e6) / 1e6;
  }
}
