package standstill.rank;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * A sign that is absent counts against its own fault, only in a stage that the paste shows from its
 * beginning, and all of them together never by more than {@code least-absence}: consoles are quiet
 * in many ways. Beside a sign that is there, the others say less ({@code absence-beside}): wordings
 * belong to programs, and one machine has one of them.
 */
final class Absence {
  static final String NAME = "absence";

  private final boolean on;
  private final double floor;
  private final double least;
  private final double beside;

  Absence(Model model, Corrections corrections) {
    this.on = corrections.on(NAME);
    this.floor = model.number("absence-floor");
    this.least = model.number("least-absence");
    this.beside = model.number("absence-beside");
  }

  /**
   * The factors, whose product is never below the floor; their order makes no difference.
   *
   * @param untold ids of signs of which the paste can't tell whether they are there
   */
  List<Factor> factors(
      Fault fault, List<Seen> seen, Telling telling, Trace trace, Set<String> untold) {
    List<Factor> factors = new ArrayList<>();
    if (!on || !trace.complete().contains(fault.stage())) {
      return factors;
    }
    Set<String> seenEvents = new HashSet<>();
    seen.forEach(s -> seenEvents.add(s.sign().event()));
    Map<String, Sign> absent = new LinkedHashMap<>();
    for (Sign sign : fault.signs()) {
      if (!seenEvents.contains(sign.event()) && !untold.contains(sign.id())) {
        absent.merge(sign.event(), sign, (a, b) -> a.shows().value() >= b.shows().value() ? a : b);
      }
    }
    double product = 1;
    for (Sign sign : absent.values()) {
      double background = telling.background(sign);
      double ratio = (1 - sign.shows().value()) / (1 - background);
      double value = Math.max(floor, Math.pow(Math.min(1, ratio), seen.isEmpty() ? 1 : beside));
      if (value < 0.999) {
        product *= value;
        factors.add(
            new Factor(
                Factor.Kind.ABSENT,
                value,
                "absent: " + Wording.of(sign),
                List.of(new Seen(fault, sign, List.of(), 0))));
      }
    }
    if (product < least) {
      // All shrink alike, so that none of them depends on its place in the file.
      double power = Math.log(least) / Math.log(product);
      factors.replaceAll(f -> new Factor(f.kind(), Math.pow(f.value(), power), f.why(), f.signs()));
    }
    return factors;
  }
}
