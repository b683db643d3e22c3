package standstill.rank;

import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.Stop;

/**
 * P(sign | a rival), as far as the base itself knows it: the rivals of a cause are the other causes
 * of its stops, each as common as it is, and a rival shows a sign where one of its own signs is
 * proven by a text that the sign matches too. The general faults of a stop stand for its causes
 * that aren't listed. So the line in which a stop shows itself, which many of its causes have among
 * their signs, tells none of them from the others, whatever the words say.
 */
final class SharedSigns {
  static final String NAME = "shared-signs";

  /** Stops in which a fault ends less often than that are none of its own. */
  private static final double OWN_STOP = 0.05;

  private final Map<String, Double> chances = new HashMap<>();

  SharedSigns(
      Base base,
      EndsIn endsIn,
      Consequences consequences,
      Overlap overlap,
      Corrections corrections) {
    if (!corrections.on(NAME) || base.stops().isEmpty()) {
      return;
    }
    Map<Stop, Double> totals = new IdentityHashMap<>();
    for (Stop stop : base.stops()) {
      totals.put(
          stop,
          base.faults().stream()
              .filter(f -> !consequences.ofStop(f))
              .mapToDouble(f -> weight(f, stop, endsIn))
              .sum());
    }
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        Map<Fault, Double> shownBy = overlap.shownBy(sign);
        if (!consequences.ofStop(fault) && !shownBy.isEmpty()) {
          chances.put(sign.id(), chance(base, fault, shownBy, totals, endsIn, consequences));
        }
      }
    }
  }

  private static double weight(Fault fault, Stop stop, EndsIn endsIn) {
    double ends = endsIn.chance(fault, stop);
    return ends < OWN_STOP ? 0 : fault.howCommon().weight() * ends;
  }

  private static double chance(
      Base base,
      Fault own,
      Map<Fault, Double> shownBy,
      Map<Stop, Double> totals,
      EndsIn endsIn,
      Consequences consequences) {
    // What leads to the fault, and what it leads to, are no rivals: they are weighed with each
    // other.
    Set<String> kin = new HashSet<>();
    consequences.of(own).keySet().forEach(f -> kin.add(f.id()));
    for (Fault rival : shownBy.keySet()) {
      if (consequences.of(rival).containsKey(own)) {
        kin.add(rival.id());
      }
    }
    double sum = 0;
    double mass = 0;
    for (Stop stop : base.stopsOf(own)) {
      double ends = endsIn.chance(own, stop);
      if (ends < OWN_STOP) {
        continue;
      }
      double listed = totals.getOrDefault(stop, 0.0) - weight(own, stop, endsIn);
      double open = stop.unlisted().value();
      double others = listed * open / (1 - open);
      double shared = 0;
      for (Map.Entry<Fault, Double> rival : shownBy.entrySet()) {
        if (stop.general().contains(rival.getKey().id())) {
          shared += others * rival.getValue() / stop.general().size();
        } else if (!consequences.ofStop(rival.getKey()) && !kin.contains(rival.getKey().id())) {
          shared += weight(rival.getKey(), stop, endsIn) * rival.getValue();
        }
      }
      mass += ends;
      sum += listed + others <= 0 ? 0 : ends * shared / (listed + others);
    }
    return mass <= 0 ? 0 : sum / mass;
  }

  /** P(sign | a rival) by the base; 0 where it knows of none. */
  double chance(Sign sign) {
    return chances.getOrDefault(sign.id(), 0.0);
  }
}
