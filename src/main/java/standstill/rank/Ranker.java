package standstill.rank;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Milestone;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.match.Matches;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * Ranks causes by Bayes' rule.
 *
 * <p>Hypotheses are the faults of the family, <em>unlisted</em> and <em>no stall</em>; one of them
 * is true. Each starts with its prior. A sign that was seen multiplies a fault by P(seen | fault) /
 * P(seen | others); the denominator is common to all hypotheses, so that a fault that doesn't know
 * the sign keeps its weight. A fault also answers for the signs of its consequences ({@link
 * Consequences}), so that an upstream cause outranks the failure that it ends in. Signs of one
 * event, and signs that stand on the same lines, count once, with the most telling of them. A sign
 * that is absent counts against its own fault only in stages that the paste shows from their
 * beginning, and never below a floor: consoles are quiet in many ways.
 *
 * <p>Two corrections for what the model leaves out. The evidence as a whole is raised to a power
 * (the temperature, fitted on labelled boots). And a sign after which the boot went on to later
 * stages was probably not what stopped it, so its weight shrinks with each stage passed.
 *
 * <p>Limits: one cause at a time; two independent faults in one log compete instead of adding up.
 */
public final class Ranker {
  /** Names of the numbers that the scale's model must have. */
  public static final List<String> MODEL_NUMBERS = Model.NAMES;

  private static final double LEAST_STAGE_FIT = 0.004;
  private static final double CONSEQUENCE_STAGE_FIT = 0.6;
  private static final double STEPPING_BACK = 0.15;

  /** A boot whose last lines show trouble has not come through, however far it came. */
  private static final int LAST_LINES = 4;

  private static final double TROUBLE_LAST = 0.1;
  private static final double TROUBLE_AT_THE_END = 0.2;

  private final Base base;
  private final Model model;
  private final Consequences consequences;
  private final Telling telling;

  /** A ranker for a base. */
  public Ranker(Base base) {
    this.base = base;
    this.model = Model.of(base.scale());
    this.consequences = new Consequences(base, model);
    this.telling = new Telling(base, model);
  }

  /** A hypothesis before scaling. */
  private record Weighed(Fault fault, double weight, List<Factor> factors) {
    Weighed behindASpecificOne() {
      List<Factor> more = new ArrayList<>(factors);
      more.add(
          new Factor(
              Factor.Kind.STEPS_BACK,
              STEPPING_BACK,
              "a listed cause of this kind shows a sign of its own",
              List.of()));
      return new Weighed(fault, weight * STEPPING_BACK, more);
    }
  }

  /**
   * General faults to step back: by definition they stand for causes that are not listed, and a
   * specific fault that would produce them shows a decisive sign and may have stopped the boot
   * here.
   */
  private Set<String> stepBack(List<Fault> faults, Trace trace, Evidence evidence) {
    Set<String> general = new HashSet<>();
    for (Fault fault : faults) {
      boolean here = !trace.known() || fault.stopsIn().contains(trace.stage());
      boolean decisive = evidence.of(fault).stream().anyMatch(telling::decisive);
      if (!fault.general() && here && decisive) {
        consequences.of(fault).keySet().stream()
            .filter(Fault::general)
            .map(Fault::id)
            .forEach(general::add);
      }
    }
    return general;
  }

  /** Ranks the faults of a family for one boot. */
  public Ranking rank(String family, Trace trace, Matches matches) {
    List<Fault> faults = base.faultsOf(family);
    Evidence evidence = new Evidence(model, telling, consequences, trace, matches);
    double totalFrequency = faults.stream().mapToDouble(f -> f.howCommon().weight()).sum();
    double faultShare = 1 - model.unlistedShare() - model.noStallShare();
    Set<String> stepBack = stepBack(faults, trace, evidence);
    List<Weighed> weighed = new ArrayList<>();
    double sum = 0;
    for (Fault fault : faults) {
      double prior = faultShare * fault.howCommon().weight() / totalFrequency;
      Weighed hypothesis = weigh(fault, prior, trace, evidence);
      if (stepBack.contains(fault.id())) {
        hypothesis = hypothesis.behindASpecificOne();
      }
      weighed.add(hypothesis);
      sum += hypothesis.weight();
    }
    double noStall = model.noStallShare() * noStallFit(trace, matches);
    double unlisted = model.unlistedShare() * unlistedFit(trace);
    sum += noStall + unlisted;
    List<Cause> causes = new ArrayList<>();
    for (Weighed hypothesis : weighed) {
      causes.add(new Cause(hypothesis.fault(), hypothesis.weight() / sum, hypothesis.factors()));
    }
    causes.sort(
        Comparator.comparingDouble(Cause::probability)
            .reversed()
            .thenComparing(cause -> cause.fault().id()));
    return new Ranking(causes, unlisted / sum, noStall / sum);
  }

  private Weighed weigh(Fault fault, double prior, Trace trace, Evidence evidence) {
    List<Factor> factors = new ArrayList<>();
    factors.add(
        new Factor(
            Factor.Kind.PRIOR, prior, "how common it is: " + fault.howCommon().word(), List.of()));
    factors.add(stageFit(fault, consequences.of(fault).keySet(), trace));
    factors.addAll(evidence.factors(fault));
    double weight = factors.stream().mapToDouble(Factor::value).reduce(1, (a, b) -> a * b);
    return new Weighed(fault, weight, factors);
  }

  private Factor stageFit(Fault fault, Collection<Fault> reach, Trace trace) {
    Stage stop = trace.stage();
    if (!trace.known()) {
      return new Factor(Factor.Kind.STAGE, 1, "the paste doesn't tell the stage", List.of());
    }
    if (fault.stopsIn().contains(stop)) {
      return new Factor(
          Factor.Kind.STAGE, 1, "it stops boots in the stage " + stop.word(), List.of());
    }
    if (reach.stream().anyMatch(other -> !other.general() && other.stopsIn().contains(stop))) {
      return new Factor(
          Factor.Kind.STAGE,
          CONSEQUENCE_STAGE_FIT,
          "what it leads to stops boots in the stage " + stop.word(),
          List.of());
    }
    int distance =
        fault.stopsIn().stream()
            .mapToInt(stage -> Math.abs(stage.ordinal() - stop.ordinal()))
            .min()
            .orElse(1);
    double fit = Math.max(LEAST_STAGE_FIT, Math.pow(model.stageMiss(), distance));
    return new Factor(
        Factor.Kind.STAGE, fit, "it seldom stops boots in the stage " + stop.word(), List.of());
  }

  /**
   * How well "nothing stalled" fits: a prompt or a desktop was reached, or services ran on long
   * after the start.
   */
  private double noStallFit(Trace trace, Matches matches) {
    if (trace.stage() == Stage.DONE) {
      boolean proven =
          trace.milestones().stream()
              .map(Reached::milestone)
              .anyMatch(m -> m.stage() == Stage.DONE && m.proves() != Milestone.Proves.WITHIN);
      return (proven ? 90 : 18)
          * (decisiveLast(trace, matches) ? TROUBLE_LAST : 1)
          * (decisiveAtTheEnd(trace, matches) ? TROUBLE_AT_THE_END : 1);
    }
    if (trace.stage() == Stage.USERLAND) {
      int tail = trace.stageAt().size() - LAST_LINES;
      // A sign that asks for the end of the log only says that the log ends; it shows no trouble.
      boolean troubleLast =
          matches.signs().stream()
              .filter(seen -> seen.sign().form() instanceof SignForm.OnLine on && on.atEnd() == 0)
              .anyMatch(seen -> telling.tells(seen) && seen.last() >= tail);
      return (trace.endedAt().isPresent() || trace.readOut()) && !troubleLast ? 4 : 0.8;
    }
    return 0.15;
  }

  private boolean decisiveLast(Trace trace, Matches matches) {
    int tail = trace.stageAt().size() - LAST_LINES;
    return matches.signs().stream()
        .filter(seen -> !seen.fault().general() && telling.decisive(seen))
        .anyMatch(seen -> seen.last() >= tail);
  }

  /** A fault that leaves a prompt without use shows a decisive sign in the installed system. */
  private boolean decisiveAtTheEnd(Trace trace, Matches matches) {
    return matches.signs().stream()
        .filter(seen -> !seen.fault().general() && telling.decisive(seen))
        .filter(seen -> seen.fault().stopsIn().contains(Stage.DONE))
        .anyMatch(seen -> !Stage.USERLAND.isAfter(trace.stageAt().get(seen.last())));
  }

  private static double unlistedFit(Trace trace) {
    return trace.stage() == Stage.DONE ? 0.4 : 1;
  }
}
