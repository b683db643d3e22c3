package standstill.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import java.time.Duration;
import java.util.Optional;
import standstill.edit.Chronicle;
import standstill.intake.Intake;
import standstill.intake.Names;
import standstill.store.BaseInUse;
import standstill.store.Pastes;

/** Builds the web server; whoever asked for it starts it. */
public final class Server {
  /** Largest accepted log, in bytes after expansion. */
  public static final int LARGEST_LOG = 20 << 20;

  private static final int MOST_PASTES = 200;
  private static final Duration KEPT = Duration.ofHours(2);
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
    return create(inUse, desk, Settings.usual());
  }

  /** A server that is not started, reached and bounded as the settings say. */
  public static Javalin create(BaseInUse inUse, Optional<EditDesk> desk, Settings settings) {
    Pastes pastes = new Pastes(MOST_PASTES, Pastes.usualBytes(), KEPT, System::nanoTime);
    Turns turns = Turns.usual();
    Pages pages = new Pages(desk.isPresent());
    Optional<Chronicle> chronicle =
        inUse.folder().flatMap(folder -> Chronicle.of(folder, LONGEST_LOOK_BACK));
    Intake intake =
        new Intake(
            new Names(settings.names()),
            settings.proxies(),
            settings.limits(),
            Headers.ALL,
            pages::message);
    return Javalin.create(
        config -> {
          config.startup.showJavalinBanner = false;
          config.startup.showOldJavalinVersionWarning = false;
          jetty(config, intake, settings.limits().largestBody());
          Routes.install(config.routes, inUse, pastes, turns, pages, chronicle, desk);
          chronicle.ifPresent(c -> config.events.serverStopped(c::close));
        });
  }

  private static void jetty(JavalinConfig config, Intake intake, long largest) {
    config.http.maxRequestSize = largest;
    config.jetty.threadPool = Intake.threads();
    config.jetty.multipartConfig.maxFileSize(largest, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(largest, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize((int) (largest >> 20) + 1, SizeUnit.MB);
    config.jetty.modifyServer(
        server -> {
          intake.before(server);
          config.events.serverStarting(() -> intake.watch(server));
          config.events.serverStarted(() -> intake.sweep(server));
        });
  }
}
