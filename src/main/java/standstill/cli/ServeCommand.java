package standstill.cli;

import io.javalin.Javalin;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import standstill.account.Accounts;
import standstill.edit.Editing;
import standstill.edit.Refused;
import standstill.store.BaseInUse;
import standstill.web.EditDesk;
import standstill.web.Server;

/** Serves the page. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = {
      "Serves the page on this machine.",
      "Only this machine can open it unless --host says otherwise. A pasted log stays in memory,"
          + " for two hours at the most, and is sent nowhere.",
      "With --base, a change in the folder comes into use within seconds; a base with errors is"
          + " refused and the one before it stays in use."
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

  @Option(
      names = "--edit",
      description =
          "Let maintainers propose and approve changes of the base on the page. Needs --base, in a"
              + " git work tree, and --accounts.")
  private boolean edit;

  @Option(
      names = "--accounts",
      paramLabel = "FILE",
      description = "With --edit: the maintainers' accounts, as 'account add' writes them.")
  private @Nullable Path accounts;

  @Mixin private final BaseOption base = new BaseOption();
  @Mixin private final IndexOption index = new IndexOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    if (port < 0 || port > 65_535) {
      throw new Failure(ExitCode.USAGE, "--port lies between 0 and 65535");
    }
    checkHost();
    Optional<EditDesk> desk = desk();
    BaseInUse inUse = base.inUse(index.over(base.folder(), Output.errors(spec)));
    Javalin server = Server.create(inUse, desk);
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
                  desk.ifPresent(ServeCommand::close);
                  ended.countDown();
                }));
    ended.await();
    return ExitCode.OK;
  }

  /** A server that can't listen says that its port is taken, so the address is looked at before. */
  private void checkHost() {
    InetAddress address;
    try {
      address = InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new Failure(
          ExitCode.USAGE, "--host " + host + " is no address and no name that this machine knows");
    }
    try {
      if (!address.isAnyLocalAddress() && NetworkInterface.getByInetAddress(address) == null) {
        throw new Failure(
            ExitCode.USAGE,
            "--host "
                + host
                + " is not an address of this machine; 127.0.0.1 serves this machine alone, 0.0.0.0"
                + " all its networks");
      }
    } catch (SocketException e) {
      // It can't be told; the server finds out.
    }
  }

  /**
   * What editing takes. It is opened before the base is read, because a start after a sudden end
   * finishes what that left half done.
   */
  private Optional<EditDesk> desk() {
    if (!edit) {
      if (accounts != null) {
        throw new Failure(ExitCode.USAGE, "--accounts goes with --edit");
      }
      return Optional.empty();
    }
    if (accounts == null || base.folder().isEmpty()) {
      throw new Failure(
          ExitCode.USAGE,
          "--edit needs --base DIR, a folder in a git work tree, and --accounts FILE; write the"
              + " file with 'account add'");
    }
    try {
      Clock clock = Clock.systemUTC();
      Accounts read = Accounts.open(accounts);
      PrintWriter err = Output.errors(spec);
      Accounts.caution(accounts).ifPresent(c -> err.println("Caution: " + c));
      if (!InetAddress.getByName(host).isLoopbackAddress()) {
        err.println(
            "Caution: passwords and sessions cross the network; put a server with TLS before this"
                + " one.");
      }
      err.flush();
      return Optional.of(new EditDesk(Editing.open(base.folder().get(), clock), read, clock));
    } catch (NoSuchFileException e) {
      throw new Failure(ExitCode.UNREADABLE, "no file: " + e.getFile());
    } catch (Refused e) {
      throw new Failure(ExitCode.UNREADABLE, "the base can't be edited: " + e.reason());
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, String.valueOf(e.getMessage()));
    }
  }

  private static void close(EditDesk desk) {
    try {
      desk.editing().close();
    } catch (IOException e) {
      // The program ends; the system frees what is held.
    }
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
