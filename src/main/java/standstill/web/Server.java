package standstill.web;

import io.javalin.Javalin;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import standstill.edit.Chronicle;
import standstill.store.BaseInUse;
import standstill.store.Pastes;

/** Builds the web server; whoever asked for it starts it. */
public final class Server {
  /** Largest accepted log, in bytes after expansion. */
  public static final int LARGEST_LOG = 20 << 20;

  /** A form may write one byte as three ({@code %0A}), and has a frame of its own. */
  private static final long LARGEST_REQUEST = 3L * LARGEST_LOG + (1 << 20);

  private static final int MOST_PASTES = 60;
  private static final long MOST_LINES = 1_500_000;
  private static final Duration KEPT = Duration.ofHours(2);
  private static final int MOST_THREADS = 40;
  private static final Duration LONGEST_LOOK_BACK = Duration.ofMillis(500);

  private Server() {}

  /**
   * A server that is not started and has no address that writes; every request uses the base that
   * is in use when it comes in.
   */
  public static Javalin create(BaseInUse inUse) {
    return create(inUse, Optional.empty());
  }

  /** A server that is not started, with the pages for editing when there is a desk for it. */
  public static Javalin create(BaseInUse inUse, Optional<EditDesk> desk) {
    Pastes pastes = new Pastes(MOST_PASTES, MOST_LINES, KEPT, Clock.systemUTC());
    Pages pages = new Pages(desk.isPresent());
    Optional<Chronicle> chronicle =
        inUse.folder().flatMap(folder -> Chronicle.of(folder, LONGEST_LOOK_BACK));
    return Javalin.create(
        config -> {
          config.startup.showJavalinBanner = false;
          config.startup.showOldJavalinVersionWarning = false;
          config.http.maxRequestSize = LARGEST_REQUEST;
          config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS);
          config.jetty.multipartConfig.maxFileSize(
              LARGEST_REQUEST, io.javalin.config.SizeUnit.BYTES);
          config.jetty.multipartConfig.maxTotalRequestSize(
              LARGEST_REQUEST, io.javalin.config.SizeUnit.BYTES);
          config.jetty.multipartConfig.maxInMemoryFileSize(
              (int) (LARGEST_REQUEST >> 20) + 1, io.javalin.config.SizeUnit.MB);
          config.jetty.modifyServer(server -> server.setStopTimeout(2_000));
          Routes.install(config.routes, inUse, pastes, pages, chronicle, desk);
          chronicle.ifPresent(c -> config.events.serverStopped(c::close));
        });
  }
}
