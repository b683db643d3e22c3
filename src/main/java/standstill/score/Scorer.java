package standstill.score;

import java.util.ArrayList;
import java.util.HashMap;
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
import standstill.base.Sign;
import standstill.base.Stage;
import standstill.match.Seen;
import standstill.rank.Cause;
import standstill.rank.Ranker;
import standstill.rank.Ranking;
import standstill.rank.Verdict;
import standstill.report.Diagnoser;
import standstill.report.Sighting;

/**
 * Scores a base on labelled logs.
 *
 * <p>Background rates are fitted numbers, so they are evaluated by cross-validation: the logs of
 * one fault, and their cuts, stand in one fold together, and each fold is ranked with rates
 * measured on the others.
 */
public final class Scorer {
  private static final int FOLDS = 10;
  private static final int DEEPEST_RANK = 10;

  private final Base base;
  private final List<Case> cases = new ArrayList<>();

  /** Reads and matches all logs once. */
  public Scorer(Base base, List<LabelledLog> logs) {
    this.base = base;
    Diagnoser diagnoser = new Diagnoser(base);
    for (LabelledLog log : logs) {
      Optional<Sighting> sighting = diagnoser.sight(diagnoser.read(log.bytes()), 0);
      cases.add(
          new Case(
              log.label(),
              sighting.map(Sighting::family).orElse(""),
              sighting.map(s -> new Case.Seen(s.trace(), s.matches()))));
    }
  }

  /** The score with the base's own rates: for logs on which nothing was fitted. */
  public Score asIs() {
    Ranker ranker = new Ranker(base);
    return new Score(cases.stream().map(c -> result(c, ranker)).toList());
  }

  /** The score, cross-validated. */
  public Score score() {
    List<String> groups = new ArrayList<>(new TreeSet<>(cases.stream().map(Case::group).toList()));
    Map<Case, Result> results = new LinkedHashMap<>();
    cases.forEach(c -> results.put(c, null));
    for (int fold = 0; fold < FOLDS; fold++) {
      int number = fold;
      Predicate<Case> held = c -> groups.indexOf(c.group()) % FOLDS == number;
      Base fitted = base.withRates(rates(held.negate()));
      Ranker ranker = new Ranker(fitted);
      cases.stream().filter(held).forEach(c -> results.put(c, result(c, ranker)));
    }
    return new Score(new ArrayList<>(results.values()));
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
              key ->
                  new Ranker(
                      without(base.withRates(rates(c -> !c.group().equals(each.group()))), label)));
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

  /**
   * For each sign that was seen in logs of other causes, in how many; the others keep their word.
   */
  private Map<String, Rate> rates(Predicate<Case> used) {
    Map<String, Integer> seen = new HashMap<>();
    Map<String, Integer> logsOf = new HashMap<>();
    int logs = 0;
    for (Case each : cases) {
      if (!used.test(each) || each.seen().isEmpty()) {
        continue;
      }
      logs++;
      Set<String> own = new TreeSet<>(each.label().also());
      own.add(each.label().label());
      for (String id : Set.copyOf(own)) {
        base.fault(id).ifPresent(f -> own.addAll(f.leadsTo()));
      }
      // What leads to the labelled fault prints its signs too, and a general fault's signs are
      // those of its part.
      base.faults().stream()
          .filter(f -> f.general() || f.leadsTo().contains(each.label().label()))
          .forEach(f -> own.add(f.id()));
      own.forEach(id -> logsOf.merge(id, 1, Integer::sum));
      for (Seen sign : each.seen().get().matches().signs()) {
        if (!own.contains(sign.fault().id())) {
          seen.merge(sign.sign().id(), 1, Integer::sum);
        }
      }
    }
    Map<String, Rate> rates = new LinkedHashMap<>();
    for (Fault fault : base.faults()) {
      int others = logs - logsOf.getOrDefault(fault.id(), 0);
      for (Sign sign : fault.signs()) {
        int count = seen.getOrDefault(sign.id(), 0);
        if (!fault.general() && count > 0) {
          rates.put(sign.id(), new Rate(count, others));
        }
      }
    }
    return rates;
  }

  private static Result result(Case each, Ranker ranker) {
    Label label = each.label();
    if (each.seen().isEmpty()) {
      return new Result(label, "not-a-boot-log", Stage.FIRMWARE, 0, List.of(), 1, false, 0);
    }
    Case.Seen seen = each.seen().get();
    Ranking ranking = ranker.rank(each.family(), seen.trace(), seen.matches());
    int rank = 0;
    double right = 0;
    List<String> top = new ArrayList<>();
    for (int i = 0; i < ranking.causes().size(); i++) {
      Cause cause = ranking.causes().get(i);
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
      right += ranking.unlisted();
    }
    Verdict verdict = ranking.verdict();
    double first =
        switch (verdict) {
          case STALLED -> ranking.top().map(Cause::probability).orElse(0.0);
          case UNLISTED -> ranking.unlisted();
          case NO_STALL -> ranking.noStall();
        };
    boolean firstRight =
        switch (verdict) {
          case STALLED -> rank == 1;
          case UNLISTED -> label.isUnlisted();
          case NO_STALL -> label.label().equals(Label.HEALTHY);
        };
    return new Result(
        label,
        verdict.word(),
        Diagnoser.guessed(seen.trace(), ranking).stage(),
        rank,
        top,
        first,
        firstRight,
        right);
  }
}
