package standstill.rank;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Fault;
import standstill.base.Reviewed;
import standstill.base.Sign;
import standstill.base.Stage;
import standstill.base.Stop;
import standstill.match.Matches;
import standstill.text.Position;
import standstill.trace.Trace;

/**
 * Ranks what a boot ended in, and why, by Bayes' rule.
 *
 * <p>A hypothesis is a stop with a cause: one of the base's faults, or a cause that the base does
 * not list. One of them is true, or nothing stopped, which is a stop of its own. A stop is weighed
 * by its own signs, found from the end of the boot backwards. A cause of it is weighed by P(stop |
 * cause), by how common it is, and by its signs, each as P(sign | cause) / P(sign | a rival), where
 * the rivals are the other causes of the same stop: the line in which a stop shows itself says
 * nothing about which of its causes it was. A cause that isn't listed shows signs as rivals do, so
 * its factor is 1.
 *
 * <p>What the model leaves out is corrected by classes of their own, see {@link Corrections}.
 *
 * <p>Limits: one cause at a time with its consequences; two independent faults in one log compete
 * instead of adding up.
 */
public final class Ranker {
  /** Names of the numbers that the scale's model must have. */
  public static final List<String> MODEL_NUMBERS = Model.NAMES;

  private final Base base;
  private final Model model;
  private final Consequences consequences;
  private final Telling telling;
  private final EndsIn endsIn;
  private final StepsBack stepsBack;
  private final Pull pull;
  private final Weighing.Rules rules;

  /** A ranker for a base. */
  public Ranker(Base base) {
    this(base, Corrections.ALL);
  }

  /** A ranker with some of the corrections only. */
  public Ranker(Base base, Corrections corrections) {
    this(base, corrections, new Overlap(base));
  }

  /** The same, where the overlap of the base's signs is known. */
  public Ranker(Base base, Corrections corrections, Overlap overlap) {
    this.base = base;
    this.model = new Model(base.scale());
    this.consequences = new Consequences(base, model);
    this.endsIn = new EndsIn(base, model);
    this.telling =
        new Telling(base, model, new SharedSigns(base, endsIn, consequences, overlap, corrections));
    this.stepsBack = new StepsBack(model, corrections);
    this.pull = new Pull(model, corrections);
    this.rules =
        new Weighing.Rules(
            telling,
            consequences,
            new OneEvent(corrections),
            new Dependence(model, corrections),
            new PassedBy(model, corrections),
            new FarFromEnd(model, corrections),
            new StageFit(model, corrections),
            new Absence(model, corrections),
            new Borrowed(model, corrections),
            new LeftOver(model, corrections),
            new Temper(model, corrections),
            new StopUnseen(model, corrections),
            new CameThrough(model, corrections),
            new TroubleAtEnd(model, corrections));
  }

  /**
   * A cause before scaling, without what depends on the stop.
   *
   * @param before how common it is
   * @param after the same times all its evidence
   */
  private record Weighed(Fault fault, double before, double after, List<Factor> factors) {}

  /**
   * A stop before scaling.
   *
   * @param weight what it weighs against the other stops
   * @param shares of each cause in it; together with {@code open} they sum to 1
   * @param open share of causes that are not listed
   */
  private record Candidate(
      Stop stop, List<Factor> factors, double weight, double[] shares, double open) {}

  /** P(stop | fault). */
  public double chance(Fault fault, Stop stop) {
    return endsIn.chance(fault, stop);
  }

  /** Ranks the faults of a family for one boot. */
  public Ranking rank(String family, Trace trace, Matches matches) {
    Weighing weighing = new Weighing(rules, trace, matches, this::signs);
    List<Stop> stops = stops(family);
    BitSet stopLines = new BitSet();
    stops.forEach(s -> weighing.seen(s).forEach(seen -> stopLines.or(Clue.linesOf(seen))));
    List<Weighed> causes = weighed(family, trace, weighing, stopLines);
    List<Candidate> candidates = new ArrayList<>();
    double sum = 0;
    for (Stop stop : stops) {
      Candidate candidate = candidate(stop, weighing.factors(stop), causes);
      candidates.add(candidate);
      sum += candidate.weight();
    }
    List<StopBelief> beliefs = new ArrayList<>();
    double[] chances = new double[causes.size()];
    Map<Fault, Double> another = new LinkedHashMap<>();
    double unlisted = 0;
    double noStall = 0;
    for (Candidate each : candidates) {
      double probability = each.weight() / sum;
      beliefs.add(new StopBelief(each.stop(), probability, each.factors()));
      for (int c = 0; c < chances.length; c++) {
        chances[c] += probability * each.shares()[c];
      }
      double open = probability * each.open();
      if (each.stop().nothing()) {
        noStall += open;
      } else {
        unlisted += open - spread(each.stop(), open, another);
      }
    }
    beliefs.sort(
        Comparator.comparingDouble(StopBelief::probability)
            .reversed()
            .thenComparing(b -> b.stop().id()));
    return new Ranking(
        causes(causes, chances, another, beliefs.get(0).stop()), unlisted, noStall, beliefs);
  }

  private static Stop implicit(String id, double weight, double unlisted, boolean nothing) {
    return new Stop(
        id,
        id,
        List.of(),
        EnumSet.allOf(Stage.class),
        new Fault.Frequency("", weight),
        "",
        nothing,
        new Chance("", Math.min(1 - 1e-9, Math.max(1e-9, unlisted))),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Reviewed(LocalDate.MIN, ""),
        List.of(),
        Position.ofFile(""));
  }

  /** The family's stops; a base that has none knows only that something stopped, or nothing. */
  private List<Stop> stops(String family) {
    List<Stop> stops = base.stopsOf(family);
    if (!stops.isEmpty()) {
      return stops;
    }
    double noStall = model.number("no-stall-share");
    return List.of(
        implicit("stopped", 1 - noStall, model.number("unlisted-share"), false),
        implicit("nothing-stopped", noStall, 0.5, true));
  }

  private List<Sign> signs(Stop stop) {
    List<Sign> signs = new ArrayList<>(stop.signs());
    stop.general().forEach(id -> base.fault(id).ifPresent(f -> signs.addAll(f.signs())));
    return signs;
  }

  private List<Weighed> weighed(String family, Trace trace, Weighing weighing, BitSet stopLines) {
    List<Fault> faults =
        base.faultsOf(family).stream().filter(f -> !consequences.ofStop(f)).toList();
    double total = faults.stream().mapToDouble(this::weight).sum();
    Set<String> back =
        StepsBack.behind(
            faults.stream()
                .filter(f -> !f.general())
                .filter(f -> !trace.known() || f.stopsIn().contains(trace.stage()))
                .filter(f -> weighing.seen(f).stream().anyMatch(telling::decisive))
                .toList(),
            consequences);
    List<Weighed> causes = new ArrayList<>();
    for (Fault fault : faults) {
      double prior = weight(fault) / total;
      List<Factor> factors = new ArrayList<>();
      factors.add(
          new Factor(
              Factor.Kind.PRIOR,
              prior,
              "how common it is: " + fault.howCommon().word(),
              List.of()));
      factors.addAll(weighing.factors(fault, stopLines));
      if (back.contains(fault.id())) {
        factors.add(
            new Factor(
                Factor.Kind.STEPS_BACK,
                stepsBack.factor(),
                "a listed cause of this kind shows a sign of its own",
                List.of()));
      }
      causes.add(new Weighed(fault, prior, product(factors), factors));
    }
    return causes;
  }

  /** A coarse cause stands only for what is not listed of its kind. */
  private double weight(Fault fault) {
    return fault.howCommon().weight() * (fault.general() ? model.number("coarse-share") : 1);
  }

  private static double product(List<Factor> factors) {
    return factors.stream().mapToDouble(Factor::value).reduce(1, (a, b) -> a * b);
  }

  private Candidate candidate(Stop stop, List<Factor> factors, List<Weighed> causes) {
    double own = stop.howCommon().weight() * product(factors);
    double[] shares = new double[causes.size()];
    if (stop.nothing()) {
      return new Candidate(stop, factors, own, shares, 1);
    }
    double before = 0;
    double after = 0;
    for (int c = 0; c < shares.length; c++) {
      double ends = endsIn.chance(causes.get(c).fault(), stop);
      before += causes.get(c).before() * ends;
      shares[c] = causes.get(c).after() * ends;
      after += shares[c];
    }
    double unlisted = stop.unlisted().value();
    double open =
        before <= 0 ? 1 : model.number("unlisted-weight") * before * unlisted / (1 - unlisted);
    for (int c = 0; c < shares.length; c++) {
      shares[c] /= after + open;
    }
    return new Candidate(
        stop,
        factors,
        pull.weight(own, (after + open) / (before + open)),
        shares,
        open / (after + open));
  }

  /**
   * Gives a part of what a stop has for causes that aren't listed to the general faults that stand
   * for them, so that their looks and repairs are not lost.
   *
   * @return how much was given
   */
  private double spread(Stop stop, double open, Map<Fault, Double> another) {
    List<Fault> general = stop.general().stream().flatMap(id -> base.fault(id).stream()).toList();
    double given = general.isEmpty() ? 0 : open * model.number("general-share");
    general.forEach(fault -> another.merge(fault, given / general.size(), Double::sum));
    return given;
  }

  private List<Cause> causes(
      List<Weighed> weighed, double[] chances, Map<Fault, Double> another, Stop likeliest) {
    List<Cause> causes = new ArrayList<>();
    for (int c = 0; c < chances.length; c++) {
      Weighed each = weighed.get(c);
      List<Factor> factors = new ArrayList<>(each.factors());
      factors.add(
          1,
          new Factor(
              Factor.Kind.STOP,
              endsIn.chance(each.fault(), likeliest),
              "how often it ends so: " + likeliest.title(),
              List.of()));
      causes.add(new Cause(each.fault(), chances[c], factors));
    }
    another.forEach(
        (fault, chance) ->
            causes.add(
                new Cause(
                    fault,
                    chance,
                    List.of(
                        new Factor(
                            Factor.Kind.ANOTHER,
                            chance,
                            "a cause of this kind that is not listed",
                            List.of())))));
    causes.sort(
        Comparator.comparingDouble(Cause::probability)
            .reversed()
            .thenComparing(cause -> cause.fault().id()));
    return causes;
  }
}
