package standstill.rank;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stop;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * P(sign | a rival), as far as the base itself knows it: the rivals of a cause are the other causes
 * of its stops, each as common as it is, and a rival shows a sign where one of its own signs is
 * proven by a text that the sign matches too. The general faults of a stop stand for its causes that
 * aren't listed. So the line in which a stop shows itself, which many of its causes have among
 * their signs, tells none of them from the others, whatever the words say.
 */
final class SharedSigns {
  static final String NAME = "shared-signs";

  /** Stops in which a fault ends less often than that are none of its own. */
  private static final double OWN_STOP = 0.05;

  private final Map<String, Double> chances = new HashMap<>();

  /** A sign with what it stands for. */
  private record Owned(Fault fault, Sign sign, Pattern pattern) {}

  SharedSigns(Base base, EndsIn endsIn, Consequences consequences, Corrections corrections) {
    if (!corrections.on(NAME) || base.stops().isEmpty()) {
      return;
    }
    List<Owned> owned = new ArrayList<>();
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine form) {
          owned.add(new Owned(fault, sign, form.line()));
        }
      }
    }
    Map<Sign, Map<Fault, Double>> shown = shown(owned);
    Map<Stop, Double> totals = new IdentityHashMap<>();
    for (Stop stop : base.stops()) {
      totals.put(
          stop,
          base.faults().stream()
              .filter(f -> !consequences.ofStop(f))
              .mapToDouble(f -> weight(f, stop, endsIn))
              .sum());
    }
    for (Owned each : owned) {
      if (!consequences.ofStop(each.fault())) {
        chances.put(
            each.sign().id(),
            chance(
                base,
                each,
                shown.getOrDefault(each.sign(), Map.of()),
                totals,
                endsIn,
                consequences));
      }
    }
  }

  private static double weight(Fault fault, Stop stop, EndsIn endsIn) {
    double ends = endsIn.chance(fault, stop);
    return ends < OWN_STOP ? 0 : fault.howCommon().weight() * ends;
  }

  /**
   * For each sign, the faults one of whose proving texts it matches, with the chance that they show
   * it: that of their sign, times the share of its texts that match.
   */
  private static Map<Sign, Map<Fault, Double>> shown(List<Owned> owned) {
    PatternSet patterns = new PatternSet(owned.stream().map(Owned::pattern).toList());
    Map<Sign, Map<Fault, Double>> shown = new IdentityHashMap<>();
    for (Owned other : owned) {
      Map<Integer, Integer> matched = new HashMap<>();
      for (String text : other.sign().seen()) {
        patterns.candidates(
            text,
            false,
            (pattern, place) -> {
              if (pattern.foundIn(text)) {
                matched.merge(place, 1, Integer::sum);
              }
            });
      }
      matched.forEach(
          (place, times) -> {
            Owned each = owned.get(place);
            if (!each.fault().equals(other.fault())) {
              double chance =
                  other.sign().shows().value() * times / Math.max(1, other.sign().seen().size());
              shown
                  .computeIfAbsent(each.sign(), k -> new HashMap<>())
                  .merge(other.fault(), chance, Math::max);
            }
          });
    }
    return shown;
  }

  private static double chance(
      Base base,
      Owned each,
      Map<Fault, Double> shownBy,
      Map<Stop, Double> totals,
      EndsIn endsIn,
      Consequences consequences) {
    // What leads to the fault, and what it leads to, are no rivals: they are weighed with each other.
    Set<String> kin = new HashSet<>();
    consequences.of(each.fault()).keySet().forEach(f -> kin.add(f.id()));
    for (Fault rival : shownBy.keySet()) {
      if (consequences.of(rival).containsKey(each.fault())) {
        kin.add(rival.id());
      }
    }
    double sum = 0;
    double mass = 0;
    for (Stop stop : base.stopsOf(each.fault())) {
      double ends = endsIn.chance(each.fault(), stop);
      if (ends < OWN_STOP) {
        continue;
      }
      double listed =
          totals.getOrDefault(stop, 0.0) - weight(each.fault(), stop, endsIn);
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
