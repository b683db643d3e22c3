package standstill.intake;

import java.net.InetAddress;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * Bounds connections, in all and of one client, and how long the header of a request may take. The
 * one that has waited longest without asking anything gives way to a new one, so that whoever holds
 * many open keeps nobody else out.
 */
final class Connections extends Handler.Wrapper implements Connection.Listener {
  private final Intake intake;
  private final Map<Connection, State> open = new LinkedHashMap<>();

  private static final class State {
    private final String client;
    private final boolean shared;
    private int requests;
    private long bytesSeen;
    private long headSince;

    State(String client, boolean shared) {
      this.client = client;
      this.shared = shared;
    }
  }

  Connections(Intake intake) {
    this.intake = intake;
  }

  /** How many connections are open. */
  synchronized int open() {
    return open.size();
  }

  @Override
  public void onOpened(Connection connection) {
    Optional<InetAddress> from = Client.address(connection.getEndPoint().getRemoteSocketAddress());
    State state =
        new State(
            from.map(Client::key).orElse("unknown"),
            from.isPresent() && Client.isShared(from.get(), intake.proxies()));
    close(add(connection, state));
  }

  private synchronized @Nullable Connection add(Connection connection, State state) {
    open.put(connection, state);
    Map<String, Integer> counts = new HashMap<>();
    open.values().forEach(s -> counts.merge(s.client, 1, Integer::sum));
    Connection tooMany = null;
    if (!state.shared
        && counts.getOrDefault(state.client, 0) > intake.limits().connectionsOfOne()) {
      tooMany = longestIdle(state.client).orElse(connection);
    } else if (open.size() > intake.limits().connections()) {
      tooMany =
          counts.entrySet().stream()
              .max(Map.Entry.comparingByValue())
              .flatMap(most -> longestIdle(most.getKey()))
              .orElse(connection);
    }
    if (tooMany != null) {
      // At once, so that the next one to come doesn't choose the same while it is being closed.
      open.remove(tooMany);
    }
    return tooMany;
  }

  private Optional<Connection> longestIdle(String client) {
    return open.entrySet().stream()
        .filter(e -> e.getValue().client.equals(client) && e.getValue().requests == 0)
        .map(Map.Entry::getKey)
        .findFirst();
  }

  private void close(@Nullable Connection connection) {
    if (connection != null) {
      connection.getEndPoint().close();
    }
  }

  @Override
  public synchronized void onClosed(Connection connection) {
    open.remove(connection);
  }

  /** Closes connections on which the header of a request has been coming in for too long. */
  void sweep() {
    List<Connection> slow = new ArrayList<>();
    long now = System.nanoTime();
    synchronized (this) {
      open.forEach(
          (connection, state) -> {
            if (state.requests > 0 || connection.getBytesIn() <= state.bytesSeen) {
              state.headSince = 0;
            } else if (state.headSince == 0) {
              state.headSince = now;
            } else if (now - state.headSince > intake.limits().head().toNanos()) {
              slow.add(connection);
            }
          });
    }
    slow.forEach(this::close);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Connection connection = request.getConnectionMetaData().getConnection();
    begin(connection);
    return super.handle(request, response, Callback.from(callback, () -> end(connection)));
  }

  private synchronized void begin(Connection connection) {
    State state = open.get(connection);
    if (state != null) {
      state.requests++;
    }
  }

  private synchronized void end(Connection connection) {
    State state = open.remove(connection);
    if (state != null) {
      state.requests--;
      state.bytesSeen = connection.getBytesIn();
      state.headSince = 0;
      // Again at the end: the first in line is the one that has waited longest.
      open.put(connection, state);
    }
  }
}
