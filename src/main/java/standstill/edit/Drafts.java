package standstill.edit;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Drafts of a running server: in memory only, bounded in number and size; the one that was longest
 * untouched is thrown out first. Thread-safe.
 */
public final class Drafts {
  /** Longest text to try a draft on, in characters. */
  public static final int LONGEST_LOG = 2 << 20;

  private static final int MOST = 100;
  private static final long MOST_CHARACTERS = 40L << 20;

  private final Map<String, Draft> byId = new LinkedHashMap<>();

  /** Keeps a draft, in place of one of the same id. */
  public synchronized void keep(Draft draft) {
    byId.remove(draft.id());
    byId.put(draft.id(), draft);
    while (byId.size() > MOST || (byId.size() > 1 && characters() > MOST_CHARACTERS)) {
      byId.remove(byId.keySet().iterator().next());
    }
  }

  /** Somebody's own draft; empty when there is none, or it is another's. */
  public synchronized Optional<Draft> find(String id, String who) {
    return Optional.ofNullable(byId.get(id)).filter(draft -> draft.who().equals(who));
  }

  /** Forgets a draft. */
  public synchronized void forget(String id) {
    byId.remove(id);
  }

  private long characters() {
    return byId.values().stream().mapToLong(d -> d.text().length() + d.log().length()).sum();
  }
}
