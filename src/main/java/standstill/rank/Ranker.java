package standstill.rank;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Milestone;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.match.Hit;
import standstill.match.Matches;
import standstill.match.Seen;
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
 * <p>Two corrections for what the model leaves out. Signs aren't independent, so the evidence as a
 * whole is raised to a power below 1 (the temperature, fitted on labelled boots). And a sign after
 * which the boot went on to later stages was probably not what stopped it, so its weight shrinks
 * with each stage passed.
 *
 * <p>Limits: one cause at a time; two independent faults in one log compete instead of adding up.
 */
public final class Ranker {
  /** Names of the numbers that the scale's model must have. */
  public static final List<String> MODEL_NUMBERS = Model.NAMES;

  private static final double LEAST_STAGE_FIT = 0.004;
  private static final double CONSEQUENCE_STAGE_FIT = 0.6;
  private static final double LEAST_ABSENCE = 0.08;
  private static final double STEPPING_BACK = 0.15;
  private static final double TELLING = 5;

  /** A boot whose last lines show trouble has not come through, however far it came. */
  private static final int LAST_LINES = 4;

  /** A sign is decisive when fewer than one in a hundred boots of other causes show it. */
  private static final double DECISIVE = 0.01;

  /**
   * Wordings belong to programs, and one machine has one of them: beside a sign that is there, the
   * others say less.
   */
  private static final double ABSENCE_BESIDE_A_SIGN = 0.3;

  private final Base base;
  private final Model model;
  private final Consequences consequences;
  private final Map<String, Double> backgrounds = new HashMap<>();

  /** A ranker for a base. */
  public Ranker(Base base) {
    this.base = base;
    this.model = Model.of(base.scale());
    this.consequences = new Consequences(base, model);
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        backgrounds.put(sign.id(), model.background(base, sign));
      }
    }
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
  private Set<String> stepBack(
      List<Fault> faults, Trace trace, Map<String, List<Seen>> seenByFault) {
    Set<String> general = new java.util.HashSet<>();
    for (Fault fault : faults) {
      boolean here = !trace.known() || fault.stopsIn().contains(trace.stage());
      boolean decisive =
          seenByFault.getOrDefault(fault.id(), List.of()).stream()
              .anyMatch(
                  s ->
                      !s.hits().isEmpty()
                          && backgrounds.getOrDefault(s.sign().id(), 1.0) < DECISIVE);
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
    Map<String, List<Seen>> seenByFault = new HashMap<>();
    for (Seen seen : matches.signs()) {
      seenByFault.computeIfAbsent(seen.fault().id(), k -> new ArrayList<>()).add(seen);
    }
    double totalFrequency = faults.stream().mapToDouble(f -> f.howCommon().weight()).sum();
    double faultShare = 1 - model.unlistedShare() - model.noStallShare();
    Set<String> stepBack = stepBack(faults, trace, seenByFault);
    List<Weighed> weighed = new ArrayList<>();
    double sum = 0;
    for (Fault fault : faults) {
      double prior = faultShare * fault.howCommon().weight() / totalFrequency;
      Weighed hypothesis = weigh(fault, prior, trace, seenByFault);
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

  private Weighed weigh(
      Fault fault, double prior, Trace trace, Map<String, List<Seen>> seenByFault) {
    List<Factor> factors = new ArrayList<>();
    factors.add(
        new Factor(
            Factor.Kind.PRIOR, prior, "how common it is: " + fault.howCommon().word(), List.of()));
    Map<Fault, Double> reach = consequences.of(fault);
    Factor stage = stageFit(fault, reach.keySet(), trace);
    factors.add(stage);
    double weight = prior * stage.value();
    List<Factor> seen = seenFactors(fault, reach, trace, seenByFault);
    for (Factor factor : seen) {
      factors.add(factor);
      weight *= factor.value();
    }
    Factor borrowed = borrowed(fault, seen, seenByFault.getOrDefault(fault.id(), List.of()));
    if (borrowed.value() < 1) {
      factors.add(borrowed);
      weight *= borrowed.value();
    }
    double absence = 1;
    for (Factor factor :
        absentFactors(fault, trace, seenByFault.getOrDefault(fault.id(), List.of()))) {
      if (absence * factor.value() >= LEAST_ABSENCE) {
        absence *= factor.value();
        factors.add(factor);
      }
    }
    return new Weighed(fault, weight * absence, factors);
  }

  /**
   * Evidence that is borrowed from consequences needs backing by a sign of the fault's own: every
   * possible upstream cause could otherwise claim every failure that follows from it. A decisive
   * own sign is full backing, one that merely tells something is some, and is enough where only
   * general faults are borrowed from.
   */
  private Factor borrowed(Fault fault, List<Factor> seen, List<Seen> own) {
    boolean decisive =
        own.stream()
            .anyMatch(s -> tells(s) && backgrounds.getOrDefault(s.sign().id(), 1.0) < DECISIVE);
    boolean telling = own.stream().anyMatch(this::tells);
    boolean fromSpecific =
        seen.stream()
            .flatMap(f -> f.signs().stream().limit(1))
            .anyMatch(s -> !s.fault().equals(fault) && !s.fault().general());
    double value = seen.isEmpty() || decisive || (telling && !fromSpecific) ? 1 : model.noOwnSign();
    if (telling && value < 1) {
      value = Math.sqrt(value);
    }
    String why =
        telling
            ? "its own signs are common; the rest is what it leads to"
            : "only what it leads to was seen, and no sign of its own";
    return new Factor(Factor.Kind.ABSENT, value, why, List.of());
  }

  /**
   * Whether a sign is a line that says something: at least five times as likely with its fault as
   * without.
   */
  private boolean tells(Seen seen) {
    double background = backgrounds.getOrDefault(seen.sign().id(), 1.0);
    return !seen.hits().isEmpty() && seen.sign().shows().value() >= TELLING * background;
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
   * A sign that was seen, what it is worth to the fault being weighed, and the lines that it stands
   * on.
   */
  private record Weighted(Seen seen, double ratio, BitSet lines) {}

  private List<Factor> seenFactors(
      Fault fault, Map<Fault, Double> reach, Trace trace, Map<String, List<Seen>> seenByFault) {
    List<Weighted> all = new ArrayList<>();
    reach.forEach(
        (other, link) -> {
          for (Seen seen : seenByFault.getOrDefault(other.id(), List.of())) {
            double chance = seen.sign().shows().value() * link;
            double background = backgrounds.getOrDefault(seen.sign().id(), 0.01);
            double ratio = Math.max(chance, background) / background;
            double exponent = model.temperature() * passed(seen, fault, reach.keySet(), trace);
            all.add(new Weighted(seen, Math.pow(ratio, exponent), lines(seen)));
          }
        });
    all.sort(
        Comparator.comparingDouble(Weighted::ratio)
            .reversed()
            .thenComparing(w -> w.seen().sign().id()));
    List<Factor> factors = new ArrayList<>();
    Set<String> events = new java.util.HashSet<>();
    BitSet counted = new BitSet();
    Map<String, List<Seen>> sameEvent = new LinkedHashMap<>();
    List<Weighted> heads = new ArrayList<>();
    for (Weighted each : all) {
      boolean again = !events.add(each.seen().sign().event()) || each.lines().intersects(counted);
      counted.or(each.lines());
      if (again || each.ratio() <= 1.0001) {
        heads.stream()
            .filter(h -> h.lines().intersects(each.lines()) || sameEvent(h, each))
            .findFirst()
            .ifPresent(
                h -> sameEvent.computeIfAbsent(key(h), k -> new ArrayList<>()).add(each.seen()));
      } else {
        heads.add(each);
      }
    }
    for (Weighted head : heads) {
      List<Seen> signs = new ArrayList<>(List.of(head.seen()));
      signs.addAll(sameEvent.getOrDefault(key(head), List.of()));
      String why =
          head.seen().fault().equals(fault)
              ? "a sign of it"
              : "a sign of what it leads to: " + head.seen().fault().title();
      factors.add(new Factor(Factor.Kind.SEEN, head.ratio(), why, signs));
    }
    return factors;
  }

  private static boolean sameEvent(Weighted a, Weighted b) {
    return a.seen().sign().event().equals(b.seen().sign().event());
  }

  private static String key(Weighted weighted) {
    return weighted.seen().sign().id();
  }

  private static BitSet lines(Seen seen) {
    BitSet lines = new BitSet();
    for (Hit hit : seen.hits()) {
      lines.set(hit.index());
    }
    return lines;
  }

  /**
   * The exponent for what the boot went on to after the sign's last line: later stages, unless the
   * fault may stop boots there, and the good end of the last stage.
   */
  private double passed(Seen seen, Fault fault, Collection<Fault> reach, Trace trace) {
    if (seen.hits().isEmpty() || !trace.known()) {
      return 1;
    }
    int last = seen.hits().get(seen.hits().size() - 1).index();
    int passed = trace.endedAt().isPresent() && last < trace.endedAt().getAsInt() ? 1 : 0;
    Set<Stage> stops = EnumSet.noneOf(Stage.class);
    stops.addAll(fault.stopsIn());
    reach.stream().filter(f -> !f.general()).forEach(f -> stops.addAll(f.stopsIn()));
    if (!stops.contains(trace.stage())) {
      passed += Math.max(0, trace.stage().ordinal() - trace.stageAt().get(last).ordinal());
    }
    return Math.pow(model.passedBy(), passed);
  }

  private List<Factor> absentFactors(Fault fault, Trace trace, List<Seen> seen) {
    List<Factor> factors = new ArrayList<>();
    if (!trace.complete().contains(fault.stage())) {
      return factors;
    }
    Set<String> seenEvents = new java.util.HashSet<>();
    seen.forEach(s -> seenEvents.add(s.sign().event()));
    Map<String, Sign> absent = new LinkedHashMap<>();
    for (Sign sign : fault.signs()) {
      if (!seenEvents.contains(sign.event())) {
        absent.merge(sign.event(), sign, (a, b) -> a.shows().value() >= b.shows().value() ? a : b);
      }
    }
    for (Sign sign : absent.values()) {
      double background = backgrounds.getOrDefault(sign.id(), 0.01);
      double ratio = (1 - sign.shows().value()) / (1 - background);
      double exponent = model.temperature() * (seen.isEmpty() ? 1 : ABSENCE_BESIDE_A_SIGN);
      double value = Math.max(model.absenceFloor(), Math.pow(ratio, exponent));
      if (value < 0.999) {
        factors.add(
            new Factor(
                Factor.Kind.ABSENT,
                value,
                "absent: " + sign.form().describe(),
                List.of(new Seen(fault, sign, List.of(), 0))));
      }
    }
    return factors;
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
      return proven ? 60 : 18;
    }
    if (trace.stage() == Stage.USERLAND) {
      int tail = trace.stageAt().size() - LAST_LINES;
      // A sign that asks for the end of the log only says that the log ends; it shows no trouble.
      boolean troubleLast =
          matches.signs().stream()
              .filter(seen -> seen.sign().form() instanceof SignForm.OnLine on && on.atEnd() == 0)
              .anyMatch(
                  seen -> tells(seen) && seen.hits().get(seen.hits().size() - 1).index() >= tail);
      return trace.endedAt().isPresent() && !troubleLast ? 4 : 0.8;
    }
    return 0.15;
  }

  private static double unlistedFit(Trace trace) {
    return trace.stage() == Stage.DONE ? 0.4 : 1;
  }
}
