package standstill.rank;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.base.Stop;
import standstill.match.Matches;
import standstill.match.Seen;
import standstill.trace.Trace;

/** What one boot says about stops and about faults, as factors. */
final class Weighing {
  private final Rules rules;
  private final Trace trace;
  private final Matches matches;
  private final SeenSigns seenSigns;
  private final Function<Stop, List<Sign>> signs;

  /** What is the same for all boots. */
  record Rules(
      Telling telling,
      Consequences consequences,
      OneEvent oneEvent,
      Dependence dependence,
      PassedBy passedBy,
      FarFromEnd farFromEnd,
      StageFit stageFit,
      Absence absence,
      Borrowed borrowed,
      LeftOver leftOver,
      Temper temper,
      StopUnseen stopUnseen,
      CameThrough cameThrough,
      TroubleAtEnd troubleAtEnd) {}

  /**
   * A weighing.
   *
   * @param signs all that a stop may show
   */
  Weighing(Rules rules, Trace trace, Matches matches, Function<Stop, List<Sign>> signs) {
    this.signs = signs;
    this.rules = rules;
    this.trace = trace;
    this.matches = matches;
    this.seenSigns = new SeenSigns(matches);
  }

  /** Signs of a fault that were seen. */
  List<Seen> seen(Fault fault) {
    return seenSigns.of(fault);
  }

  /** Signs of a stop that were seen, those of its general faults included. */
  List<Seen> seen(Stop stop) {
    List<Seen> all = new ArrayList<>(seenSigns.of(stop.id()));
    stop.general().forEach(id -> all.addAll(seenSigns.of(id)));
    return all;
  }

  /** What the boot's end says of a stop: its signs, and the stage. */
  List<Factor> factors(Stop stop) {
    List<Clue> clues = new ArrayList<>();
    for (Seen seen : seen(stop)) {
      // A milestone that was reached stays reached, whatever comes after it.
      boolean lasting = seen.sign().form() instanceof SignForm.Reached;
      double exponent =
          rules.temper().ofStops()
              * (lasting
                  ? 1
                  : rules.passedBy().exponent(seen, stop.stages(), trace)
                      * rules.farFromEnd().exponent(seen, trace));
      clues.add(
          new Clue(
              seen,
              seen.sign().shows().value(),
              rules.telling().background(seen.sign()),
              exponent,
              Clue.linesOf(seen)));
    }
    List<Factor> factors = new ArrayList<>();
    factors.add(
        new Factor(
            Factor.Kind.STAGE,
            rules.stageFit().of(stop.stages(), trace),
            "progress ended in the stage " + trace.stage().word(),
            List.of()));
    factors.addAll(seenFactors(clues, clue -> "what this stop shows"));
    double shown = stop.nothing() ? rules.cameThrough().factor(trace) : 1;
    if (shown != 1) {
      factors.add(
          new Factor(
              Factor.Kind.STAGE, shown, "the text was taken on a system that runs", List.of()));
    }
    double trouble =
        stop.nothing() ? rules.troubleAtEnd().factor(matches, trace, rules.telling()) : 1;
    if (trouble < 1) {
      factors.add(
          new Factor(
              Factor.Kind.ABSENT,
              trouble,
              "a decisive sign of trouble stands in the installed system or on the last lines",
              List.of()));
    }
    double unseen = rules.stopUnseen().factor(signs.apply(stop), !clues.isEmpty());
    if (unseen < 1) {
      factors.add(new Factor(Factor.Kind.ABSENT, unseen, "nothing at the end shows it", List.of()));
    }
    return factors;
  }

  /**
   * All factors that what was seen and what is missing give to a fault.
   *
   * @param stopLines lines in which the stop itself shows
   */
  List<Factor> factors(Fault fault, BitSet stopLines) {
    Map<Fault, Double> reach = rules.consequences().of(fault);
    Set<Stage> stages = stages(fault, reach);
    List<Clue> clues = new ArrayList<>();
    BitSet known = (BitSet) stopLines.clone();
    reach.forEach(
        (other, link) -> {
          for (Seen seen : seenSigns.of(other)) {
            double exponent =
                rules.temper().ofCauses() * rules.passedBy().exponent(seen, stages, trace);
            Clue clue =
                new Clue(
                    seen,
                    seen.sign().shows().value() * link,
                    rules.telling().background(seen.sign()),
                    exponent,
                    Clue.linesOf(seen));
            clues.add(clue);
            known.or(clue.lines());
          }
        });
    List<Factor> factors =
        seenFactors(
            clues,
            clue ->
                clue.seen().fault().id().equals(fault.id())
                    ? "a sign of it"
                    : "a sign of what it leads to: " + clue.seen().fault().title());
    factors.add(rules.borrowed().factor(fault, seen(fault), factors, rules.telling()));
    factors.addAll(
        rules.absence().factors(fault, seen(fault), rules.telling(), trace, matches.untold()));
    if (!fault.general()) {
      factors.add(rules.leftOver().factor(matches.complaints(), known));
    }
    factors.removeIf(f -> f.kind() != Factor.Kind.SEEN && f.value() >= 1);
    factors.add(
        new Factor(
            Factor.Kind.STAGE,
            rules.stageFit().of(stages, trace),
            "it seldom stops boots in the stage " + trace.stage().word(),
            List.of()));
    return factors;
  }

  private List<Factor> seenFactors(List<Clue> clues, Function<Clue, String> why) {
    List<OneEvent.Group> groups = rules.oneEvent().groups(clues);
    Map<Clue, Double> values =
        rules.dependence().values(groups.stream().map(OneEvent.Group::head).toList());
    List<Factor> factors = new ArrayList<>();
    // The most telling first: a reader wants the line that proves it.
    for (OneEvent.Group group : groups) {
      List<Seen> signs = new ArrayList<>(List.of(group.head().seen()));
      group.rest().forEach(clue -> signs.add(clue.seen()));
      factors.add(
          new Factor(
              Factor.Kind.SEEN,
              values.getOrDefault(group.head(), 1.0),
              why.apply(group.head()),
              signs));
    }
    return factors;
  }

  /** Stages in which a fault, or a specific one that it leads to, may stop a boot. */
  private static Set<Stage> stages(Fault fault, Map<Fault, Double> reach) {
    Set<Stage> stages = EnumSet.noneOf(Stage.class);
    stages.addAll(fault.stopsIn());
    reach.keySet().stream().filter(f -> !f.general()).forEach(f -> stages.addAll(f.stopsIn()));
    return stages;
  }
}
