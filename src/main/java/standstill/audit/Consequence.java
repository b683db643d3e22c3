package standstill.audit;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;

/** Which fault ends in which, over any number of links. */
final class Consequence {
  private final Map<String, Set<String>> reach = new HashMap<>();

  Consequence(Base base) {
    for (Fault fault : base.faults()) {
      Set<String> seen = new HashSet<>();
      ArrayDeque<Fault> open = new ArrayDeque<>();
      open.add(fault);
      while (!open.isEmpty()) {
        for (String id : open.remove().leadsTo()) {
          base.fault(id).filter(next -> seen.add(next.id())).ifPresent(open::add);
        }
      }
      reach.put(fault.id(), seen);
    }
  }

  /** Whether a cause produces the signs of another one. */
  boolean leads(Fault from, Fault to) {
    return reach.getOrDefault(from.id(), Set.of()).contains(to.id());
  }
}
