package standstill.rank;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import standstill.base.Base;
import standstill.base.Fault;

/** The faults of a base by their ids and former ids, for those who follow many links. */
final class ById {
  private final Map<String, Fault> faults = new HashMap<>();

  ById(Base base) {
    base.faults().forEach(f -> f.aliases().forEach(alias -> faults.putIfAbsent(alias, f)));
    base.faults().forEach(f -> faults.put(f.id(), f));
  }

  Optional<Fault> fault(String id) {
    return Optional.ofNullable(faults.get(id));
  }
}
