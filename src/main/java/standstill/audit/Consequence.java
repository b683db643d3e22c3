package standstill.audit;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;

/** Which fault ends in which, over any number of links; looked up once for all. */
final class Consequence {
  private final Map<String, Set<String>> reach = new HashMap<>();

  Consequence(Base base) {
    for (Fault fault : base.faults()) {
      reach.put(fault.id(), base.outcomes(fault));
    }
  }

  /** Whether a cause produces the signs of another one. */
  boolean leads(Fault from, Fault to) {
    return reach.getOrDefault(from.id(), Set.of()).contains(to.id());
  }
}
