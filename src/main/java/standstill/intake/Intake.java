package standstill.intake;

import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.eclipse.jetty.util.thread.Scheduler;
import org.eclipse.jetty.util.thread.ThreadPool;

/** What stands before the pages: the entry of this room. */
public final class Intake {
  /** The attribute of a request that holds who it is from, as a text. */
  public static final String CLIENT_KEY = "standstill.client";

  /** The attribute of a request that was answered for want of time: nobody waits for more. */
  public static final String LATE = "standstill.late";

  private static final int MOST_THREADS = 120;
  private static final long SWEEP_MILLIS = 3_000;
  private static final long STOP_MILLIS = 2_000;

  private final Names names;
  private final Addresses proxies;
  private final Limits limits;
  private final Budget budget;
  private final HttpFields headers;
  private final BiFunction<String, String, String> page;
  private final Connections connections;
  private final Bodies bodies;

  /**
   * Prepares what is let in.
   *
   * @param names by which the server is reached
   * @param proxies whose word on a request's sender is taken
   * @param headers that go out with every refusal
   * @param page makes a page of a title and an advice
   */
  public Intake(
      Names names,
      Addresses proxies,
      Limits limits,
      Map<String, String> headers,
      BiFunction<String, String, String> page) {
    this.names = names;
    this.proxies = proxies;
    this.limits = limits;
    this.budget = new Budget(limits.bodyBytes(), limits.bodyBytes() / 2);
    HttpFields.Mutable all = HttpFields.build();
    headers.forEach(all::put);
    this.headers = all.asImmutable();
    this.page = page;
    this.connections = new Connections(this);
    this.bodies = new Bodies(this);
  }

  /** The threads that work on requests. */
  public static ThreadPool threads() {
    return new QueuedThreadPool(MOST_THREADS);
  }

  /** Stands before a server that is not started yet; its pages are attached behind. */
  public void before(Server server) {
    Door door = new Door(this);
    TimeLimit time = new TimeLimit(this);
    server.setStopTimeout(STOP_MILLIS);
    server.setHandler(connections);
    connections.setHandler(door);
    door.setHandler(bodies);
    bodies.setHandler(time);
  }

  /** Watches a server's connections from its start on. */
  public void watch(Server server) {
    for (Connector connector : server.getConnectors()) {
      if (connector instanceof AbstractConnector each) {
        each.setIdleTimeout(limits.silence().toMillis());
        each.addBean(connections);
      }
    }
  }

  /** Looks after slow headers while a started server runs. */
  public void sweep(Server server) {
    Scheduler scheduler = server.getScheduler();
    if (server.isRunning()) {
      connections.sweep();
      scheduler.schedule(() -> sweep(server), SWEEP_MILLIS, TimeUnit.MILLISECONDS);
    }
  }

  /** How many connections are open. */
  public int connections() {
    return connections.open();
  }

  /** How many bodies are waited for. */
  public int unfinished() {
    return bodies.waiting();
  }

  /** How many bytes of bodies and answers are held. */
  public long held() {
    return budget.taken();
  }

  Names names() {
    return names;
  }

  Addresses proxies() {
    return proxies;
  }

  Limits limits() {
    return limits;
  }

  Budget budget() {
    return budget;
  }

  static String client(Request request) {
    return (String) Objects.requireNonNull(request.getAttribute(CLIENT_KEY), "nobody asked");
  }

  void refuse(Request request, Response response, Callback callback, Refusal refusal) {
    refusal.send(request, response, callback, headers, page);
  }
}
