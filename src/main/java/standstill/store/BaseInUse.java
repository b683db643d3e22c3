package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import standstill.audit.Audit;
import standstill.base.Base;
import standstill.base.yaml.LabelReader;
import standstill.base.yaml.Loaded;
import standstill.search.Search;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * The base that a running program uses. Over a folder it takes up a changed base by itself: the new
 * edition is made beside the old one and put in its place in one step, so that nobody waits and no
 * request sees half of each. A base with errors is refused and the old edition stays.
 *
 * <p>Changes are found by looking at the folder's files from time to time rather than by
 * notifications of the operating system, which network file systems and some containers lack. A
 * change is read when the folder looked the same twice in a row, so that a writer has finished;
 * what changed while it was read is not taken, but read again. Thread-safe.
 */
public final class BaseInUse implements AutoCloseable {
  /** Attempts to read a folder that changes meanwhile, when somebody waits for the outcome. */
  private static final int ATTEMPTS = 3;

  /** How long a look may take before people are told. */
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Optional<Path> folder;
  private final Function<Base, Search> searching;
  private final Clock clock;
  private final List<Consumer<State>> listeners = new ArrayList<>();
  private volatile State state;

  /** When the look that is under way began. */
  private volatile @Nullable Instant looking;

  private FolderStamp lastRead;
  private FolderStamp lastSeen;
  private @Nullable ScheduledExecutorService watch;

  /**
   * What is in use, at one moment.
   *
   * @param edition in use
   * @param refused why the base on disk is not in use; empty when it is
   */
  public record State(Edition edition, Optional<Refused> refused) {}

  /**
   * A base on disk that was not taken up.
   *
   * @param since when it was read
   * @param errors in the order of their places; never empty
   */
  public record Refused(Instant since, List<Problem> errors) {
    public Refused {
      errors = List.copyOf(errors);
    }
  }

  private BaseInUse(
      Optional<Path> folder,
      Function<Base, Search> searching,
      Clock clock,
      Edition first,
      FolderStamp stamp) {
    this.folder = folder;
    this.searching = searching;
    this.clock = clock;
    this.state = new State(first, Optional.empty());
    this.lastRead = stamp;
    this.lastSeen = stamp;
  }

  /** A base that never changes, with its search index in memory. */
  public static BaseInUse fixed(Base base) {
    return fixed(base, b -> Search.open(b, Optional.empty()));
  }

  /**
   * A base that never changes.
   *
   * @param searching opens the search over a base
   */
  public static BaseInUse fixed(Base base, Function<Base, Search> searching) {
    Clock clock = Clock.systemUTC();
    LabelReader.Labels none = new LabelReader.Labels(List.of(), List.of());
    Edition only = Edition.of(1, base, none, List.of(), searching, clock.instant());
    return new BaseInUse(Optional.empty(), searching, clock, only, FolderStamp.NONE);
  }

  /**
   * The base in a folder.
   *
   * @param searching opens the search over a base
   * @throws IOException when the folder can't be read
   * @throws RefusedBaseException when the base has errors
   */
  public static BaseInUse of(Path folder, Function<Base, Search> searching)
      throws IOException, RefusedBaseException {
    Clock clock = Clock.systemUTC();
    FolderStamp stamp = FolderStamp.of(folder);
    Edition first = read(folder, 1, searching, clock);
    return new BaseInUse(Optional.of(folder), searching, clock, first, stamp);
  }

  /**
   * What is in use now. Whoever needs it more than once for one purpose asks once and keeps it.
   *
   * <p>A folder that does not answer, as on a disk or a network that hangs, is said too.
   */
  public State now() {
    return after(Duration.ZERO);
  }

  /** What {@link #now} says when as much time has passed and nothing has changed. */
  State after(Duration more) {
    State now = state;
    Instant began = looking;
    if (began == null || began.plus(PATIENCE).isAfter(clock.instant().plus(more))) {
      return now;
    }
    Problem silent =
        problem("the folder has not answered", "the disk or the network below it may hang");
    return new State(now.edition(), Optional.of(new Refused(began, List.of(silent))));
  }

  /** Where the base is read from; empty when it never changes. */
  public Optional<Path> folder() {
    return folder;
  }

  /** Calls the listener after each change that was taken up or refused. */
  public synchronized void onChange(Consumer<State> listener) {
    listeners.add(listener);
  }

  /** Looks at the folder again and again, on a thread of its own, until this is closed. */
  public synchronized void watch(Duration every) {
    if (folder.isEmpty() || watch != null) {
      return;
    }
    watch =
        Executors.newSingleThreadScheduledExecutor(
            work -> {
              Thread thread = new Thread(work, "base-watch");
              thread.setDaemon(true);
              return thread;
            });
    watch.scheduleWithFixedDelay(
        this::look, every.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
  }

  /**
   * Reads the base when the folder has changed and has come to rest. Nothing is thrown: the watch
   * would end with it.
   */
  synchronized void look() {
    looking = clock.instant();
    try {
      FolderStamp now = FolderStamp.of(folder.orElseThrow());
      boolean rests = now.equals(lastSeen);
      lastSeen = now;
      if (rests && !now.equals(lastRead)) {
        attempt();
      }
    } catch (RuntimeException | Error e) {
      // As much as can be done when not even the folder's stamp could be taken.
      tell(refused(List.of(problem("the folder could not be looked at: " + said(e), ""))));
    } finally {
      looking = null;
    }
  }

  /**
   * Reads the base at once, whether it seems changed or not, and returns when the outcome is in
   * use. A base that never changes stays as it is.
   */
  public synchronized State reload() {
    if (folder.isPresent()) {
      for (int i = 0; i < ATTEMPTS && !attempt(); i++) {
        lastSeen = FolderStamp.of(folder.get());
      }
    }
    return state;
  }

  /** One reading; false when the folder changed meanwhile, and then nothing has happened. */
  private boolean attempt() {
    Path from = folder.orElseThrow();
    FolderStamp before = FolderStamp.of(from);
    State next;
    try {
      next =
          new State(read(from, state.edition().number() + 1, searching, clock), Optional.empty());
    } catch (RefusedBaseException e) {
      next = refused(e.errors());
    } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError e) {
      // Whatever it is, the edition in use is sound and has to stay: this is the edge of a thread.
      next = refused(List.of(problem("the base could not be read: " + said(e), "")));
    }
    if (!before.equals(FolderStamp.of(from))) {
      return false;
    }
    lastRead = before;
    tell(next);
    return true;
  }

  private void tell(State next) {
    state = next;
    for (Consumer<State> listener : listeners) {
      try {
        listener.accept(next);
      } catch (RuntimeException e) {
        // One that can't take the news keeps it from nobody else, and the watch goes on.
      }
    }
  }

  private Problem problem(String message, String advice) {
    return Problem.error(Position.ofFile(folder.orElseThrow() + "/"), message, advice);
  }

  /** In words for whoever keeps the base. */
  private static String said(Throwable e) {
    if (e instanceof OutOfMemoryError) {
      return "it takes more memory than the program has";
    }
    if (e instanceof StackOverflowError) {
      return "something in it is nested too deeply";
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private State refused(List<Problem> errors) {
    return new State(state.edition(), Optional.of(new Refused(clock.instant(), errors)));
  }

  private static Edition read(
      Path folder, int number, Function<Base, Search> searching, Clock clock)
      throws IOException, RefusedBaseException {
    Loaded loaded = BaseFolder.read(folder);
    List<Problem> problems = new ArrayList<>(loaded.problems());
    if (!loaded.hasErrors()) {
      problems.addAll(Audit.problems(loaded.base()));
    }
    List<Problem> errors = problems.stream().filter(Problem::isError).sorted().toList();
    if (!errors.isEmpty()) {
      throw new RefusedBaseException(errors);
    }
    Path boots = folder.resolve(BootFolder.NAME);
    LabelReader.Labels labels =
        Files.isDirectory(boots)
            ? BootFolder.labels(boots)
            : new LabelReader.Labels(List.of(), List.of());
    return Edition.of(number, loaded.base(), labels, problems, searching, clock.instant());
  }

  @Override
  public synchronized void close() {
    if (watch != null) {
      watch.shutdownNow();
    }
  }
}
