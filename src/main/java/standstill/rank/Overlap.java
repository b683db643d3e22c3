package standstill.rank;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.match.SharedTexts;

/**
 * For each sign, the other faults one of whose proving texts it matches, with the chance that they
 * show it: that of their sign, times the share of its texts that match. It depends on the base's
 * signs alone, so that rankers with other numbers share it.
 */
public final class Overlap {
  private final Map<String, Map<Fault, Double>> shown = new HashMap<>();

  /** A sign that matches texts of another fault's sign. */
  private record Pair(Sign by, Fault in, Sign of) {}

  /** The overlap of all signs on lines. */
  public Overlap(Base base) {
    Map<Pair, Integer> times = new HashMap<>();
    SharedTexts.each(
        base, each -> times.merge(new Pair(each.by(), each.in(), each.of()), 1, Integer::sum));
    times.forEach(
        (pair, count) ->
            shown
                .computeIfAbsent(pair.by().id(), id -> new HashMap<>())
                .merge(
                    pair.in(),
                    pair.of().shows().value() * count / pair.of().seen().size(),
                    Math::max));
  }

  private Overlap(Overlap whole, Set<Fault> kept) {
    whole.shown.forEach(
        (sign, faults) -> {
          Map<Fault, Double> left = new HashMap<>(faults);
          left.keySet().retainAll(kept);
          shown.put(sign, left);
        });
  }

  /** The overlap of the faults that a smaller base still has. */
  public Overlap within(Base fewer) {
    return new Overlap(this, Set.copyOf(fewer.faults()));
  }

  /** The faults that show a sign of another one. */
  Map<Fault, Double> shownBy(Sign sign) {
    return shown.getOrDefault(sign.id(), Map.of());
  }
}
