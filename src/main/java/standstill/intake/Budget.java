package standstill.intake;

import java.util.HashMap;
import java.util.Map;

/** Bytes that are held at once: a bound on all, and half of it for one client. Thread-safe. */
final class Budget {
  private final long most;
  private final Map<String, Long> ofClient = new HashMap<>();
  private long all;

  Budget(long most) {
    this.most = most;
  }

  /** Takes so many bytes for a client; false, and nothing is taken, when they aren't there. */
  synchronized boolean take(String client, long bytes) {
    long own = ofClient.getOrDefault(client, 0L);
    if (all + bytes > most || own + bytes > most / 2) {
      return false;
    }
    all += bytes;
    ofClient.put(client, own + bytes);
    return true;
  }

  synchronized void giveBack(String client, long bytes) {
    all -= bytes;
    long left = ofClient.getOrDefault(client, 0L) - bytes;
    if (left > 0) {
      ofClient.put(client, left);
    } else {
      ofClient.remove(client);
    }
  }

  synchronized long taken() {
    return all;
  }
}
