package standstill.intake;

import java.util.HashMap;
import java.util.Map;

/** What is held at once: a bound on all, and a lower one for each client. Thread-safe. */
public final class Budget {
  private final long most;
  private final long mostOfOne;
  private final Map<String, Long> ofClient = new HashMap<>();
  private long all;

  /**
   * Nothing held.
   *
   * @param most of all clients together
   * @param mostOfOne of one client
   */
  public Budget(long most, long mostOfOne) {
    this.most = most;
    this.mostOfOne = mostOfOne;
  }

  /** Takes so much for a client; false, and nothing is taken, when it isn't there. */
  public synchronized boolean take(String client, long size) {
    long own = ofClient.getOrDefault(client, 0L);
    if (all + size > most || own + size > mostOfOne) {
      return false;
    }
    all += size;
    ofClient.put(client, own + size);
    return true;
  }

  /** Gives back what was taken. */
  public synchronized void giveBack(String client, long size) {
    all -= size;
    long left = ofClient.getOrDefault(client, 0L) - size;
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
