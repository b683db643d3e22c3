package standstill.report;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import standstill.base.Base;
import standstill.base.Family;
import standstill.guide.Look;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.log.LogReader;
import standstill.match.Complaint;
import standstill.match.Matches;
import standstill.match.SignMatcher;
import standstill.match.Surroundings;
import standstill.rank.Cause;
import standstill.rank.Ranker;
import standstill.rank.Ranking;
import standstill.rank.Verdict;
import standstill.trace.Trace;
import standstill.trace.Tracer;

/** Text to report. Safe to use from many threads. */
public final class Diagnoser {
  /** Lines before the end of the boot in which unexplained trouble is worth showing. */
  private static final int NEAR_THE_STOP = 80;

  private static final int MOST_UNEXPLAINED = 20;

  /** A text of at most that many lines may be a boot log by one decisive sign alone. */
  private static final int SHORT_TEXT = 60;

  /** A sign is decisive when it is seen in hardly any boot of another cause. */
  private static final double DECISIVE = 0.03;

  private final Base base;
  private final LogReader reader;
  private final Map<String, Tracer> tracers = new HashMap<>();
  private final Map<String, SignMatcher> matchers = new HashMap<>();
  private final Surroundings surroundings;
  private @Nullable Ranker ranker;

  /** Prepares a base for diagnosing. */
  public Diagnoser(Base base) {
    this.base = base;
    this.reader = new LogReader(base.families());
    for (Family family : base.families()) {
      tracers.put(family.id(), new Tracer(family));
      matchers.put(family.id(), new SignMatcher(base, family));
    }
    this.surroundings = new Surroundings(base);
  }

  /** The base that is diagnosed with. */
  public Base base() {
    return base;
  }

  /**
   * The ranker, made for the first diagnosis: it compares all signs of the base, which those who
   * only read a log need not wait for.
   */
  private synchronized Ranker ranker() {
    if (ranker == null) {
      ranker = new Ranker(base);
    }
    return ranker;
  }

  /** Diagnoses the last boot of a text that stopped. */
  public Report diagnose(byte[] bytes) {
    return diagnose(read(bytes), 0);
  }

  /** Diagnoses the last boot of a text that stopped. */
  public Report diagnose(String text) {
    return diagnose(taken(reader.read(text)), 0);
  }

  /** Reads a text without diagnosing it. */
  public BootLog read(byte[] bytes) {
    return taken(reader.read(bytes));
  }

  /**
   * A short text that has none of the usual shapes is a boot log all the same when a decisive sign
   * of the base stands in it: one line from a firmware's screen is all that some people have.
   */
  private BootLog taken(BootLog log) {
    if (log.isBootLog() || log.boots().isEmpty() || log.lineCount() > SHORT_TEXT) {
      return log;
    }
    Boot last = log.boots().get(log.boots().size() - 1);
    for (Family family : base.families()) {
      boolean decisive =
          matcher(family).match(last, tracer(family).trace(last)).signs().stream()
              .anyMatch(
                  seen -> !seen.hits().isEmpty() && seen.sign().elsewhere().value() < DECISIVE);
      if (decisive) {
        return log.takenFor(family.id());
      }
    }
    return log;
  }

  /**
   * Diagnoses one boot of a log.
   *
   * @param boot its number from 1; 0 for the last one that stopped
   * @throws IllegalArgumentException when the log has no boot of that number
   */
  public Report diagnose(BootLog log, int boot) {
    if (boot < 0 || boot > Math.max(1, log.boots().size())) {
      throw new IllegalArgumentException(
          "no boot " + boot + " in this log; it has " + log.boots().size());
    }
    Optional<Family> other =
        base.family(log.family()).filter(family -> !family.notDiagnosed().isEmpty());
    if (log.isBootLog() && other.isPresent()) {
      return new Report(
          Report.NOT_DIAGNOSED,
          "this is a boot of "
              + other.get().title()
              + ": "
              + other.get().notDiagnosed().replaceFirst("\\.$", ""),
          log,
          Optional.empty());
    }
    Optional<Sighting> sighting = sight(log, boot);
    if (sighting.isEmpty()) {
      String reason =
          log.reasonNotALog().isEmpty()
              ? "no line looks like one that a boot prints"
              : log.reasonNotALog();
      return new Report(Report.NOT_A_BOOT_LOG, reason, log, Optional.empty());
    }
    Sighting seen = sighting.get();
    Ranking ranking = ranker().rank(seen.family(), seen.trace(), seen.matches());
    Report.Diagnosis diagnosis =
        new Report.Diagnosis(
            seen.boot(),
            seen.why(),
            guessed(seen.trace(), ranking),
            ranking,
            seen.matches().trails(),
            surroundings.of(seen.boot()),
            unexplained(seen.boot(), explained(seen.matches(), ranking)),
            ranking.verdict() == Verdict.NO_STALL ? Optional.empty() : Look.best(base, ranking),
            seen.matches().machine());
    return new Report(ranking.verdict().word(), "", log, Optional.of(diagnosis));
  }

  /**
   * What is to be seen in one boot of a log; empty when it is not a boot log.
   *
   * @param boot its number from 1; 0 for the last one that stopped
   */
  public Optional<Sighting> sight(BootLog log, int boot) {
    Optional<Family> family = base.family(log.family());
    if (!log.isBootLog()
        || log.boots().isEmpty()
        || family.isEmpty()
        || !family.get().notDiagnosed().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(BootChoice.choose(log.boots(), boot, b -> sight(family.get(), b)));
  }

  private Sighting sight(Family family, Boot boot) {
    Trace trace = tracer(family).trace(boot);
    return new Sighting(family.id(), boot, trace, matcher(family).match(boot, trace));
  }

  /** Without a milestone the likeliest cause's own stage is the best guess. */
  public static Trace guessed(Trace trace, Ranking ranking) {
    return ranking
        .top()
        .filter(Cause::hasProof)
        .map(cause -> trace.guessed(cause.fault().stage()))
        .orElse(trace);
  }

  private Tracer tracer(Family family) {
    return Objects.requireNonNull(tracers.get(family.id()));
  }

  private SignMatcher matcher(Family family) {
    return Objects.requireNonNull(matchers.get(family.id()));
  }

  /** Lines that an entry explains, and those in which the likeliest stop shows itself. */
  private static BitSet explained(Matches matches, Ranking ranking) {
    BitSet explained = matches.explained();
    ranking.stop().stream()
        .flatMap(stop -> stop.factors().stream())
        .flatMap(factor -> factor.signs().stream())
        .flatMap(sign -> sign.hits().stream())
        .forEach(hit -> explained.set(hit.index()));
    return explained;
  }

  private static List<LogLine> unexplained(Boot boot, BitSet explained) {
    List<LogLine> lines = boot.lines();
    List<LogLine> found = new ArrayList<>();
    for (int i = lines.size() - 1; i >= 0 && i >= lines.size() - NEAR_THE_STOP; i--) {
      LogLine line = lines.get(i);
      if (!explained.get(i) && found.size() < MOST_UNEXPLAINED && Complaint.speaksOfTrouble(line)) {
        found.add(0, line);
      }
    }
    return found;
  }
}
