package standstill.rank;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Fault;
import standstill.base.Stop;

/**
 * P(stop | fault): the word of the entry, or that of what the fault leads to, weakened by each
 * link. A fault that doesn't name a stop may still end in one of its stages ({@code
 * stop-by-stage}), and hardly ever elsewhere ({@code stop-elsewhere}).
 */
final class EndsIn {
  private final Map<String, Map<String, Double>> byFault = new HashMap<>();

  EndsIn(Base base, Model model) {
    Map<String, Stop> ofGeneral = new HashMap<>();
    base.stops().forEach(stop -> stop.general().forEach(id -> ofGeneral.put(id, stop)));
    ById ids = new ById(base);
    for (Fault fault : base.faults()) {
      byFault.put(fault.id(), chances(base, ids, model, fault, ofGeneral));
    }
  }

  private static Map<String, Double> chances(
      Base base, ById ids, Model model, Fault start, Map<String, Stop> ofGeneral) {
    Map<String, Double> named = new HashMap<>();
    Map<String, Double> reached = new HashMap<>(Map.of(start.id(), 1.0));
    ArrayDeque<Fault> open = new ArrayDeque<>();
    open.add(start);
    while (!open.isEmpty()) {
      Fault fault = open.remove();
      double here = reached.getOrDefault(fault.id(), 1.0);
      for (Map.Entry<String, Chance> each : fault.endsIn().entrySet()) {
        named.merge(each.getKey(), here * each.getValue().value(), Math::max);
      }
      for (String id : fault.leadsTo()) {
        double chance = here * model.number("leads-to");
        if (chance >= model.number("faintest-link") && !reached.containsKey(id)) {
          ids.fault(id)
              .filter(next -> !ofGeneral.containsKey(next.id()))
              .ifPresent(
                  next -> {
                    reached.put(next.id(), chance);
                    open.add(next);
                  });
        }
      }
    }
    Map<String, Double> all = new HashMap<>();
    for (Stop stop : base.stops()) {
      boolean sameStage = !Collections.disjoint(stop.stages(), start.stopsIn());
      double least =
          sameStage && !stop.nothing()
              ? model.number("stop-by-stage")
              : model.number("stop-elsewhere");
      all.put(stop.id(), Math.max(least, named.getOrDefault(stop.id(), 0.0)));
    }
    return all;
  }

  /** P(stop | fault); 1 where the base has no stops. */
  double chance(Fault fault, Stop stop) {
    return byFault.getOrDefault(fault.id(), Map.of()).getOrDefault(stop.id(), 1.0);
  }
}
