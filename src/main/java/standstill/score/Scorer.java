package standstill.score;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Label;
import standstill.base.Rate;
import standstill.base.Stage;
import standstill.base.Stop;
import standstill.rank.Cause;
import standstill.rank.Corrections;
import standstill.rank.Overlap;
import standstill.rank.Ranker;
import standstill.rank.Ranking;
import standstill.rank.StopBelief;
import standstill.rank.Verdict;
import standstill.report.Diagnoser;
import standstill.report.Sighting;

/**
 * Scores a base on labelled logs.
 *
 * <p>Background rates are fitted numbers, so they are evaluated by cross-validation. A source is an
 * outer fold: it is ranked with rates measured on the other sources. The boots beside the base,
 * which nobody held out, are split once more: the logs of one fault, and their cuts, stand in one
 * fold together.
 */
public final class Scorer {
  /** Name of the source that stands beside the base. */
  public static final String OWN = "own";

  private static final int FOLDS = 10;
  private static final int DEEPEST_RANK = 10;

  /** A labelled fault's stops are right where it ends in them at least that often. */
  private static final double ENDS_SO = 0.1;

  private final Base base;
  private final Corrections corrections;
  private final List<Case> cases = new ArrayList<>();
  private final Overlap overlap;

  /** Tells in which stops faults end, with the base's own rates. */
  private final Ranker counting;

  /** Rates of each fold, by what is held out; they don't depend on what is fitted. */
  private final Map<String, Map<String, Rate>> ratesOfFold;

  /** Reads and matches all logs once. */
  public Scorer(Base base, List<LabelledLog> logs) {
    this(base, List.of(new Source(OWN, logs)), Corrections.ALL);
  }

  /** Reads and matches all logs of all sources once. */
  public Scorer(Base base, List<Source> sources, Corrections corrections) {
    this.base = base;
    this.corrections = corrections;
    this.overlap = new Overlap(base);
    this.ratesOfFold = new HashMap<>();
    this.counting = new Ranker(base, Corrections.ALL, overlap);
    Diagnoser diagnoser = new Diagnoser(base);
    for (Source source : sources) {
      for (LabelledLog log : source.logs()) {
        Optional<Sighting> sighting = diagnoser.sight(diagnoser.read(log.bytes()), 0);
        cases.add(
            new Case(
                source.name(),
                log.label(),
                sighting.map(Sighting::family).orElse(""),
                sighting.map(s -> new Case.Seen(s.trace(), s.matches())),
                stops(log.label())));
      }
    }
  }

  private Scorer(Base base, Corrections corrections, Scorer other) {
    this.base = base;
    this.corrections = corrections;
    this.overlap = other.overlap;
    this.counting = other.counting;
    this.ratesOfFold = other.ratesOfFold;
    this.cases.addAll(other.cases);
  }

  /** The same cases with other corrections. */
  public Scorer with(Corrections others) {
    return new Scorer(base, others, this);
  }

  /** The score with other numbers of the model, cross-validated. */
  public Score score(Map<String, Double> model) {
    return new Scorer(base.withModel(model), corrections, this).score();
  }

  /** Names of the sources, in their order. */
  public List<String> sources() {
    return cases.stream().map(Case::source).distinct().toList();
  }

  /** The stops that a label names, or those in which its fault ends. */
  private Set<String> stops(Label label) {
    Set<String> stops = new HashSet<>(label.stops());
    if (label.label().equals(Label.HEALTHY)) {
      base.stops().stream().filter(Stop::nothing).map(Stop::id).forEach(stops::add);
    } else if (stops.isEmpty()) {
      List<String> ids = new ArrayList<>(label.also());
      ids.add(label.label());
      for (String id : ids) {
        Optional<Fault> fault = base.fault(id);
        if (fault.isPresent() && !fault.get().endsIn().isEmpty()) {
          base.stops().stream()
              .filter(stop -> counting.chance(fault.get(), stop) >= ENDS_SO)
              .map(Stop::id)
              .forEach(stops::add);
        }
      }
    }
    return stops;
  }

  /** The score with the base's own rates: for logs on which nothing was fitted. */
  public Score asIs() {
    Ranker ranker = new Ranker(base, corrections, overlap);
    return new Score(cases.stream().map(c -> result(c, ranker)).toList());
  }

  /** The score, cross-validated. */
  public Score score() {
    Map<Case, Result> results = new LinkedHashMap<>();
    cases.forEach(c -> results.put(c, null));
    for (String source : sources()) {
      Predicate<Case> inside = c -> c.source().equals(source);
      if (source.equals(OWN)) {
        List<String> groups =
            new ArrayList<>(new TreeSet<>(cases.stream().filter(inside).map(Case::group).toList()));
        for (int fold = 0; fold < FOLDS; fold++) {
          int number = fold;
          judge(
              source + " " + fold,
              inside.and(c -> groups.indexOf(c.group()) % FOLDS == number),
              results);
        }
      } else {
        judge(source, inside, results);
      }
    }
    return new Score(new ArrayList<>(results.values()));
  }

  private void judge(String fold, Predicate<Case> held, Map<Case, Result> results) {
    Map<String, Rate> rates = ratesOfFold.computeIfAbsent(fold, f -> rates(held.negate()));
    Ranker ranker = new Ranker(base.withRates(rates), corrections, overlap);
    cases.stream().filter(held).forEach(c -> results.put(c, result(c, ranker)));
  }

  /**
   * Takes each fault out of the base in turn and looks at its logs: right is then
   * <em>unlisted</em>, or a general fault that the label names or that the hidden fault leads to.
   */
  public List<Hidden> hideEach() {
    List<Hidden> all = new ArrayList<>();
    Map<List<String>, Ranker> rankers = new HashMap<>();
    for (Case each : cases) {
      Label label = each.label();
      if (!label.isFault() || each.seen().isEmpty() || base.fault(label.label()).isEmpty()) {
        continue;
      }
      // Boots of one fault may differ in what else is right for them.
      List<String> hidden = new ArrayList<>(label.also());
      hidden.add(label.label());
      Ranker ranker =
          rankers.computeIfAbsent(
              hidden,
              key -> {
                Predicate<Case> others = c -> !c.group().equals(each.group());
                Base fewer = without(base.withRates(rates(others)), label);
                return new Ranker(fewer, corrections, overlap.within(fewer));
              });
      Ranking ranking =
          ranker.rank(each.family(), each.seen().get().trace(), each.seen().get().matches());
      Verdict verdict = ranking.verdict();
      Optional<Cause> top = ranking.top();
      String said =
          verdict == Verdict.STALLED ? top.map(c -> c.fault().id()).orElse("") : verdict.word();
      boolean general =
          verdict == Verdict.STALLED
              && top.isPresent()
              && (label.general().contains(said)
                  || (top.get().fault().general() && leadsTo(label.label(), said)));
      all.add(
          new Hidden(
              label,
              said,
              verdict == Verdict.UNLISTED || general,
              top.map(Cause::probability).orElse(0.0)));
    }
    return all;
  }

  private boolean leadsTo(String id, String outcome) {
    return base.fault(id).map(base::outcomes).map(ids -> ids.contains(outcome)).orElse(false);
  }

  private static Base without(Base base, Label label) {
    Base fewer = base.without(label.label());
    for (String also : label.also()) {
      fewer = base.fault(also).map(Fault::general).orElse(false) ? fewer : fewer.without(also);
    }
    return fewer;
  }

  /**
   * What a log came out as with its fault hidden.
   *
   * @param label the log's label
   * @param said the first cause, or the verdict
   * @param right whether that is right
   * @param probability of the first cause
   */
  public record Hidden(Label label, String said, boolean right, double probability) {}

  /** Background rates measured on all logs. */
  public Map<String, Rate> rates() {
    return rates(c -> true);
  }

  private Map<String, Rate> rates(Predicate<Case> used) {
    return new BackgroundRates(base, counting).of(cases.stream().filter(used).toList());
  }

  private static Result result(Case each, Ranker ranker) {
    Label label = each.label();
    if (each.seen().isEmpty()) {
      return new Result(
          each.source(),
          label,
          "not-a-boot-log",
          Stage.FIRMWARE,
          "",
          each.stops().isEmpty() ? Optional.empty() : Optional.of(false),
          0,
          List.of(),
          1,
          false,
          0);
    }
    Case.Seen seen = each.seen().get();
    Ranking ranking = ranker.rank(each.family(), seen.trace(), seen.matches());
    List<Cause> listed = ranking.listed();
    int rank = 0;
    double right = 0;
    List<String> top = new ArrayList<>();
    for (int i = 0; i < listed.size(); i++) {
      Cause cause = listed.get(i);
      String id = cause.fault().id();
      if (i < 3) {
        top.add(id);
      }
      if (label.accepts(id)) {
        right += cause.probability();
        if (rank == 0 && i < DEEPEST_RANK && cause.hasProof()) {
          rank = i + 1;
        }
      }
    }
    if (label.label().equals(Label.HEALTHY)) {
      right = ranking.noStall();
    } else if (label.isUnlisted()) {
      right += ranking.notListed();
    }
    Verdict verdict = ranking.verdict();
    double first =
        switch (verdict) {
          case STALLED -> ranking.top().map(Cause::probability).orElse(0.0);
          case UNLISTED -> ranking.notListed();
          case NO_STALL -> ranking.noStall();
        };
    boolean firstRight =
        switch (verdict) {
          case STALLED -> rank == 1;
          case UNLISTED -> label.isUnlisted();
          case NO_STALL -> label.label().equals(Label.HEALTHY);
        };
    String stop = ranking.stop().map(StopBelief::stop).map(Stop::id).orElse("");
    return new Result(
        each.source(),
        label,
        verdict.word(),
        Diagnoser.guessed(seen.trace(), ranking).stage(),
        stop,
        each.stops().isEmpty() ? Optional.empty() : Optional.of(each.stops().contains(stop)),
        rank,
        top,
        first,
        firstRight,
        right);
  }
}
