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
import java.util.ArrayList;
import java.util.List;
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
import standstill.intake.Addresses;
import standstill.intake.Names;
import standstill.store.BaseInUse;
import standstill.web.EditDesk;
import standstill.web.Server;
import standstill.web.Settings;

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
      names = "--name",
      paramLabel = "NAME",
      description =
          "Name by which browsers reach this server besides localhost; may be given more than once."
              + " Requests under any other name are refused.")
  private List<String> names = new ArrayList<>();

  @Option(
      names = "--proxy",
      paramLabel = "ADDRESS",
      description =
          "Address, or block such as 192.0.2.0/24, of a server that stands before this one; its"
              + " X-Forwarded-For says who a request is from. May be given more than once.")
  private List<String> proxies = new ArrayList<>();

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
    InetAddress address = address();
    Settings settings = settings(address);
    Optional<EditDesk> desk = desk(address);
    BaseInUse inUse = base.inUse(index.over(base.folder(), Output.errors(spec)));
    Javalin server = Server.create(inUse, desk, settings);
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

  /** The address to listen on; whether it is this machine's own is seen before anything starts. */
  private InetAddress address() {
    try {
      InetAddress address = InetAddress.getByName(host);
      if (address.isAnyLocalAddress() || NetworkInterface.getByInetAddress(address) != null) {
        return address;
      }
      throw new Failure(
          ExitCode.USAGE,
          "--host "
              + host
              + " is not an address of this machine; 127.0.0.1 serves this machine alone, 0.0.0.0 all its"
              + " networks");
    } catch (UnknownHostException e) {
      throw new Failure(
          ExitCode.USAGE, "--host " + host + " is no address and no name that this machine knows");
    } catch (SocketException e) {
      throw new Failure(ExitCode.UNREADABLE, "the network can't be looked at: " + e.getMessage());
    }
  }

  private Settings settings(InetAddress address) {
    List<String> all = new ArrayList<>(names);
    if (!address.getHostAddress().equals(host)) {
      all.add(host);
    }
    for (String name : names) {
      if (!Names.isName(name)) {
        throw new Failure(
            ExitCode.USAGE, "--name " + name + " is no name; leave out scheme, port and path");
      }
    }
    try {
      return Settings.of(all, Addresses.of(proxies));
    } catch (IllegalArgumentException e) {
      throw new Failure(
          ExitCode.USAGE,
          "--proxy " + e.getMessage() + " is no address; write it in digits, as 192.0.2.1");
    }
  }

  /**
   * What editing takes. It is opened before the base is read, because a start after a sudden end
   * finishes what that left half done.
   */
  private Optional<EditDesk> desk(InetAddress address) {
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
      Accounts read = Accounts.open(accounts);
      PrintWriter err = Output.errors(spec);
      Accounts.caution(accounts).ifPresent(c -> err.println("Caution: " + c));
      if (!address.isLoopbackAddress()) {
        err.println(
            "Caution: passwords and sessions cross the network; put a server with TLS before this"
                + " one.");
      }
      err.flush();
      return Optional.of(new EditDesk(Editing.open(base.folder().get(), Clock.systemUTC()), read));
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
