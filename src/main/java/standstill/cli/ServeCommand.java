package standstill.cli;

import io.javalin.Javalin;
import io.javalin.util.JavalinBindException;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import standstill.store.BaseInUse;
import standstill.web.Server;

/** Serves the page. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = {
      "Serves the page on this machine.",
      "Only this machine can open it unless --host says otherwise. A pasted log stays in memory, for two"
          + " hours at the most, and is sent nowhere.",
      "With --base, a change in the folder comes into use within seconds; a base with errors is refused and"
          + " the one before it stays in use."
    })
final class ServeCommand implements Callable<Integer> {
  private static final Duration EVERY = Duration.ofSeconds(1);
  private static final int MOST_ERRORS = 20;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "8076",
      description = "Port, 0 for any free one; ${DEFAULT-VALUE} when left out.")
  private int port;

  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description = "Address to listen on; ${DEFAULT-VALUE} when left out.")
  private String host = "127.0.0.1";

  @Mixin private final BaseOption base = new BaseOption();
  @Mixin private final IndexOption index = new IndexOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    if (port < 0 || port > 65_535) {
      throw new Failure(ExitCode.USAGE, "--port lies between 0 and 65535");
    }
    BaseInUse inUse = base.inUse(index::open);
    Javalin server = Server.create(inUse);
    try {
      server.start(host, port);
    } catch (JavalinBindException e) {
      throw new Failure(
          ExitCode.UNREADABLE,
          "port " + port + " on " + host + " is taken or not allowed; try --port 0");
    }
    PrintWriter out = Output.of(spec);
    String shown = host.contains(":") ? "[" + host + "]" : host;
    out.println("Open http://" + shown + ":" + server.port() + "/ in a browser. Ctrl-C ends it.");
    out.flush();
    PrintWriter err = Output.errors(spec);
    inUse.onChange(state -> tell(state, err));
    inUse.watch(EVERY);
    CountDownLatch ended = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.stop();
                  inUse.close();
                  ended.countDown();
                }));
    ended.await();
    return ExitCode.OK;
  }

  private static void tell(BaseInUse.State state, PrintWriter err) {
    if (state.refused().isEmpty()) {
      err.println(
          "The changed base is in use: " + state.edition().base().faults().size() + " faults.");
    } else {
      state.refused().get().errors().stream().limit(MOST_ERRORS).forEach(err::println);
      err.println("The changed base has errors and is not used; the one before it stays in use.");
    }
    err.flush();
  }
}
