package standstill.rank;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;

/**
 * For a fault, itself and the faults whose signs it also produces, each with the chance that it
 * does.
 *
 * <p>A specific fault also produces what the general faults of the same part say: that is how a
 * general fault steps back once a specific one has been seen.
 */
final class Consequences {
  private static final double FAINTEST = 0.2;

  /**
   * Chance that a specific fault also produces what a general one says: that is what general means.
   */
  private static final double GENERAL = 0.8;

  private final Map<String, Fault> byId = new HashMap<>();
  private final Map<String, Map<Fault, Double>> reach = new HashMap<>();

  Consequences(Base base, Model model) {
    for (Fault fault : base.faults()) {
      byId.put(fault.id(), fault);
      fault.aliases().forEach(alias -> byId.putIfAbsent(alias, fault));
    }
    for (Fault fault : base.faults()) {
      reach.put(fault.id(), compute(base, fault, model.leadsTo()));
    }
  }

  private Map<Fault, Double> compute(Base base, Fault start, double link) {
    Map<Fault, Double> found = new LinkedHashMap<>();
    ArrayDeque<Fault> open = new ArrayDeque<>();
    found.put(start, 1.0);
    open.add(start);
    while (!open.isEmpty()) {
      Fault fault = open.remove();
      double here = found.getOrDefault(fault, 1.0);
      for (String id : fault.leadsTo()) {
        Fault next = byId.get(id);
        if (next != null) {
          double chance = here * (next.general() ? GENERAL : link);
          if (chance >= FAINTEST && found.putIfAbsent(next, chance) == null) {
            open.add(next);
          }
        }
      }
    }
    if (!start.general()) {
      for (Fault other : base.faults()) {
        if (other.general() && other.part().equals(start.part())) {
          found.putIfAbsent(other, GENERAL);
        }
      }
    }
    return found;
  }

  /** The fault itself with chance 1, then its consequences. */
  Map<Fault, Double> of(Fault fault) {
    return reach.getOrDefault(fault.id(), Map.of(fault, 1.0));
  }
}
