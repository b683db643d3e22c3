package standstill.rank;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.Stage;
import standstill.match.Complaint;
import standstill.match.Matches;
import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * What one boot says about a fault, as factors.
 *
 * <p>Signs of one story hang together: a disk that fails prints a general line and several exact
 * ones. Multiplying P(sign | others) as if they were independent makes any fault that shares such
 * lines a sure thing. So the signs are taken from the commonest to the rarest, and each is measured
 * against how rare it is once the one before it is there: P(sign | others) divided by P(the one
 * before | others) to the power {@code dependence}. At 1 the signs would be nested and only the
 * rarest would count; at 0 they would be independent.
 */
final class Evidence {
  private static final double LEAST_ABSENCE = 0.08;

  /**
   * Wordings belong to programs, and one machine has one of them: beside a sign that is there, the
   * others say less.
   */
  private static final double ABSENCE_BESIDE_A_SIGN = 0.3;

  /** How many times as telling as a general sign on its lines a sign of one's own must be. */
  private static final double MUCH_MORE = 1.5;

  /** Most sorts of unexplained trouble that count: real logs are full of complaints. */
  private static final int MOST_LEFT_OVER = 2;

  private final Model model;
  private final Telling telling;
  private final Consequences consequences;
  private final Trace trace;
  private final Matches matches;
  private final Map<String, List<Seen>> seenByFault = new HashMap<>();
  private final Map<Seen, BitSet> lines = new IdentityHashMap<>();

  Evidence(Model model, Telling telling, Consequences consequences, Trace trace, Matches matches) {
    this.model = model;
    this.telling = telling;
    this.consequences = consequences;
    this.trace = trace;
    this.matches = matches;
    for (Seen seen : matches.signs()) {
      seenByFault.computeIfAbsent(seen.fault().id(), k -> new ArrayList<>()).add(seen);
      lines.put(seen, Telling.lines(seen));
    }
  }

  /** Signs of a fault that were seen. */
  List<Seen> of(Fault fault) {
    return seenByFault.getOrDefault(fault.id(), List.of());
  }

  private BitSet lines(Seen seen) {
    return Objects.requireNonNull(lines.get(seen));
  }

  /** All factors that what was seen and what is missing give to a fault. */
  List<Factor> factors(Fault fault) {
    Map<Fault, Double> reach = consequences.of(fault);
    List<Factor> factors = new ArrayList<>(seenFactors(fault, reach));
    factors.add(borrowed(fault, factors));
    double absence = 1;
    for (Factor factor : absentFactors(fault)) {
      if (absence * factor.value() >= LEAST_ABSENCE) {
        absence *= factor.value();
        factors.add(factor);
      }
    }
    factors.add(leftOver(fault, reach.keySet()));
    factors.removeIf(f -> f.kind() != Factor.Kind.SEEN && f.value() >= 1);
    return factors;
  }

  /**
   * A sign that was seen, what it is worth to the fault being weighed, and the lines that it stands
   * on.
   */
  private record Weighted(
      Seen seen, double chance, double background, double exponent, BitSet lines) {
    double ratio() {
      return ratioTo(background);
    }

    double ratioTo(double back) {
      return Math.pow(Math.max(chance, back) / back, exponent);
    }
  }

  private List<Factor> seenFactors(Fault fault, Map<Fault, Double> reach) {
    Set<Stage> stops = stops(fault, reach.keySet());
    List<Weighted> all = new ArrayList<>();
    reach.forEach(
        (other, link) -> {
          for (Seen seen : of(other)) {
            double chance = seen.sign().shows().value() * link;
            double background = telling.background(seen.sign());
            double exponent = model.temperature() * passed(seen, stops);
            all.add(new Weighted(seen, chance, background, exponent, lines(seen)));
          }
        });
    all.sort(
        Comparator.comparingDouble(Weighted::ratio)
            .reversed()
            .thenComparing(w -> w.seen().sign().id()));
    List<Factor> factors = new ArrayList<>();
    Set<String> events = new HashSet<>();
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
    Map<Weighted, Double> values = valuesInOrderOfRarity(heads);
    // The most telling first: a reader wants the line that proves it.
    for (Weighted head : heads) {
      List<Seen> signs = new ArrayList<>(List.of(head.seen()));
      signs.addAll(sameEvent.getOrDefault(key(head), List.of()));
      String why =
          head.seen().fault().equals(fault)
              ? "a sign of it"
              : "a sign of what it leads to: " + head.seen().fault().title();
      factors.add(new Factor(Factor.Kind.SEEN, values.getOrDefault(head, 1.0), why, signs));
    }
    return factors;
  }

  /** What each is worth once the next commoner one is there. */
  private Map<Weighted, Double> valuesInOrderOfRarity(List<Weighted> heads) {
    Map<Weighted, Double> values = new IdentityHashMap<>();
    List<Weighted> commonestFirst = new ArrayList<>(heads);
    commonestFirst.sort(Comparator.comparingDouble(Weighted::background).reversed());
    double before = 1;
    for (Weighted head : commonestFirst) {
      double conditional = Math.min(0.9, head.background() / Math.pow(before, model.dependence()));
      values.put(head, head.ratioTo(conditional));
      before = head.background();
    }
    return values;
  }

  private static boolean sameEvent(Weighted a, Weighted b) {
    return a.seen().sign().event().equals(b.seen().sign().event());
  }

  private static String key(Weighted weighted) {
    return weighted.seen().sign().id();
  }

  /**
   * Evidence that is borrowed from consequences needs backing by a sign of the fault's own: every
   * possible upstream cause could otherwise claim every failure that follows from it. A decisive
   * own sign is full backing, one that merely tells something is some, and is enough where only
   * general faults are borrowed from.
   */
  private Factor borrowed(Fault fault, List<Factor> seen) {
    List<Seen> distinct = of(fault).stream().filter(s -> saysMoreThanGeneral(fault, s)).toList();
    boolean decisive = distinct.stream().anyMatch(s -> telling.tells(s) && telling.decisive(s));
    boolean tells = distinct.stream().anyMatch(telling::tells);
    boolean fromSpecific =
        seen.stream()
            .flatMap(f -> f.signs().stream().limit(1))
            .anyMatch(s -> !s.fault().equals(fault) && !s.fault().general());
    double value = seen.isEmpty() || decisive || (tells && !fromSpecific) ? 1 : model.noOwnSign();
    if (tells && value < 1) {
      value = Math.sqrt(value);
    }
    String why =
        tells
            ? "its own signs are common; the rest is what it leads to"
            : "only what it leads to was seen, and no sign of its own";
    return new Factor(Factor.Kind.ABSENT, value, why, List.of());
  }

  /**
   * Whether a sign tells more than that what the fault leads to has happened: a general fault's
   * sign on the same lines that is nearly as rare elsewhere says all that this one says.
   */
  private boolean saysMoreThanGeneral(Fault fault, Seen own) {
    if (fault.general() || own.hits().isEmpty()) {
      return true;
    }
    double ratio = telling.ratio(own.sign()) / MUCH_MORE;
    BitSet ownLines = lines(own);
    return consequences.of(fault).keySet().stream()
        .filter(Fault::general)
        .flatMap(general -> of(general).stream())
        .noneMatch(seen -> telling.ratio(seen.sign()) >= ratio && lines(seen).intersects(ownLines));
  }

  private List<Factor> absentFactors(Fault fault) {
    List<Seen> seen = of(fault);
    List<Factor> factors = new ArrayList<>();
    if (!trace.complete().contains(fault.stage())) {
      return factors;
    }
    Set<String> seenEvents = new HashSet<>();
    seen.forEach(s -> seenEvents.add(s.sign().event()));
    Map<String, Sign> absent = new LinkedHashMap<>();
    for (Sign sign : fault.signs()) {
      if (!seenEvents.contains(sign.event()) && !matches.untold().contains(sign.id())) {
        absent.merge(sign.event(), sign, (a, b) -> a.shows().value() >= b.shows().value() ? a : b);
      }
    }
    for (Sign sign : absent.values()) {
      double background = telling.background(sign);
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
   * Trouble near the stop that the fault doesn't account for: each kind of line makes it likelier
   * that something else stopped the boot. General faults stand for what isn't listed.
   */
  private Factor leftOver(Fault fault, Collection<Fault> reach) {
    Set<String> shapes = new LinkedHashSet<>();
    if (!fault.general()) {
      BitSet known = new BitSet();
      reach.forEach(each -> of(each).forEach(seen -> known.or(lines(seen))));
      Set<String> explained = new HashSet<>();
      for (Complaint complaint : matches.complaints()) {
        shapes.add(complaint.shape());
        if (known.get(complaint.index())) {
          explained.add(complaint.shape());
        }
      }
      shapes.removeAll(explained);
    }
    int count = Math.min(MOST_LEFT_OVER, shapes.size());
    return new Factor(
        Factor.Kind.LEFT_OVER,
        Math.pow(model.leftOver(), count),
        "trouble near the stop that it doesn't account for: "
            + String.join("; ", shapes.stream().limit(MOST_LEFT_OVER).toList()),
        List.of());
  }

  /** Stages in which a fault, or a specific one that it leads to, may stop a boot. */
  private static Set<Stage> stops(Fault fault, Collection<Fault> reach) {
    Set<Stage> stops = EnumSet.noneOf(Stage.class);
    stops.addAll(fault.stopsIn());
    reach.stream().filter(f -> !f.general()).forEach(f -> stops.addAll(f.stopsIn()));
    return stops;
  }

  /**
   * The exponent for what the boot went on to after the sign's last line: later stages, unless the
   * fault may stop boots there, and the good end of the last stage.
   */
  private double passed(Seen seen, Set<Stage> stops) {
    if (seen.hits().isEmpty() || !trace.known()) {
      return 1;
    }
    int last = seen.last();
    // What lets the boot go on to its end is not refuted by a stage that ended well.
    boolean goesOn = stops.contains(Stage.DONE);
    int passed =
        !goesOn && trace.endedAt().isPresent() && last < trace.endedAt().getAsInt() ? 1 : 0;
    if (!stops.contains(trace.stage())) {
      passed += Math.max(0, trace.stage().ordinal() - trace.stageAt().get(last).ordinal());
    }
    return Math.pow(model.passedBy(), passed);
  }
}
