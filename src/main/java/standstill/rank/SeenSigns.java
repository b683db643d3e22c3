package standstill.rank;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import standstill.base.Fault;
import standstill.match.Matches;
import standstill.match.Seen;

/** The signs that were seen in one boot, by whose they are. */
final class SeenSigns {
  private final Map<String, List<Seen>> byBearer = new HashMap<>();

  SeenSigns(Matches matches) {
    for (Seen seen : matches.signs()) {
      byBearer.computeIfAbsent(seen.fault().id(), k -> new ArrayList<>()).add(seen);
    }
  }

  /** Those of a fault or of a stop, by its id. */
  List<Seen> of(String id) {
    return byBearer.getOrDefault(id, List.of());
  }

  List<Seen> of(Fault fault) {
    return of(fault.id());
  }
}
