package standstill.rank;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;

/**
 * For a fault, itself and the faults whose signs it also produces, each with the chance that it
 * does.
 *
 * <p>A fine cause also produces what the coarse ones of the same part say ({@code coarse-link}):
 * that is what coarse means. The general faults of a stop are none of them: what a stop shows is
 * weighed with the stop.
 */
final class Consequences {
  private final Map<String, Map<Fault, Double>> reach = new HashMap<>();
  private final Set<String> ofStops = new HashSet<>();

  Consequences(Base base, Model model) {
    base.stops().forEach(stop -> ofStops.addAll(stop.general()));
    ById ids = new ById(base);
    List<Fault> coarse = base.faults().stream().filter(Fault::general).toList();
    for (Fault fault : base.faults()) {
      reach.put(fault.id(), compute(ids, coarse, fault, model));
    }
  }

  private Map<Fault, Double> compute(ById ids, List<Fault> coarse, Fault start, Model model) {
    Map<Fault, Double> found = new LinkedHashMap<>();
    ArrayDeque<Fault> open = new ArrayDeque<>();
    found.put(start, 1.0);
    open.add(start);
    while (!open.isEmpty()) {
      Fault fault = open.remove();
      double here = found.getOrDefault(fault, 1.0);
      for (String id : fault.leadsTo()) {
        ids.fault(id)
            .filter(next -> !ofStops.contains(next.id()))
            .ifPresent(
                next -> {
                  double chance = here * model.number(next.general() ? "coarse-link" : "leads-to");
                  if (chance >= model.number("faintest-link")
                      && found.putIfAbsent(next, chance) == null) {
                    open.add(next);
                  }
                });
      }
    }
    if (!start.general()) {
      for (Fault other : coarse) {
        if (other.part().equals(start.part()) && !ofStops.contains(other.id())) {
          found.putIfAbsent(other, model.number("coarse-link"));
        }
      }
    }
    return found;
  }

  /** Whether a fault stands for another cause of a stop. */
  boolean ofStop(Fault fault) {
    return ofStops.contains(fault.id());
  }

  /** The fault itself with chance 1, then its consequences. */
  Map<Fault, Double> of(Fault fault) {
    return reach.getOrDefault(fault.id(), Map.of(fault, 1.0));
  }
}
