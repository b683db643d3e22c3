package standstill.edit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import standstill.score.LabelledLog;
import standstill.score.Score;
import standstill.score.Scorer;
import standstill.store.BootFolder;

/**
 * Measures changes on all labelled boots, one at a time on a thread of its own, and keeps the last
 * results by the digest of what was measured. Bounded and thread-safe.
 */
public final class Trials implements AutoCloseable {
  private static final int MOST_KEPT = 60;
  private static final int MOST_WAITING = 8;

  private final Checker checker;
  private final Path boots;
  private final Map<String, Trial> trials = new LinkedHashMap<>();
  private final ThreadPoolExecutor worker =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new ArrayBlockingQueue<>(MOST_WAITING),
          work -> {
            Thread thread = new Thread(work, "trials");
            thread.setDaemon(true);
            return thread;
          });
  private @Nullable Before last;

  private record Before(String commit, String stamp, Score score) {}

  Trials(Checker checker, Path folder) {
    this.checker = checker;
    this.boots = folder.resolve("boots");
  }

  /**
   * A measurement.
   *
   * @param running whether it is still waiting or at work
   * @param effect the result, when there is one
   * @param failure why there is none, or empty
   */
  public record Trial(boolean running, Optional<Effect> effect, String failure) {}

  /** Whether there are labelled boots beside the base. */
  public boolean hasBoots() {
    return Files.isDirectory(boots);
  }

  /** The measurement of a text; empty when it was not begun, or was thrown out. */
  public Optional<Trial> find(String commit, EntryName entry, String text) throws IOException {
    String key = key(commit, stamp(), entry, text);
    synchronized (this) {
      return Optional.ofNullable(trials.get(key));
    }
  }

  /** Begins to measure a text, unless that was done already. */
  public Trial begin(String commit, EntryName entry, String text) throws IOException, Refused {
    String stamp = stamp();
    return begin(key(commit, stamp, entry, text), stamp, commit, entry, text);
  }

  private synchronized Trial begin(
      String key, String stamp, String commit, EntryName entry, String text) throws Refused {
    Trial known = trials.get(key);
    if (known != null && known.failure().isEmpty()) {
      return known;
    }
    Trial begun = new Trial(true, Optional.empty(), "");
    try {
      worker.execute(() -> keep(key, measure(stamp, commit, entry, text)));
    } catch (RejectedExecutionException e) {
      throw new Refused(
          MOST_WAITING + " changes wait to be measured already. Try again in a minute.");
    }
    keep(key, begun);
    return begun;
  }

  private synchronized void keep(String key, Trial trial) {
    trials.put(key, trial);
    if (trials.size() > MOST_KEPT) {
      trials.remove(trials.keySet().iterator().next());
    }
  }

  private Trial measure(String stamp, String commit, EntryName entry, String text) {
    try {
      Checker.Checked checked = checker.check(commit, entry, text);
      Optional<String> error = checked.firstError();
      if (error.isPresent()) {
        return failed("With this text the base has an error: " + error.get());
      }
      BootFolder.Boots read = BootFolder.read(boots);
      if (!read.problems().isEmpty()) {
        return failed("A labelled boot can't be read: " + read.problems().get(0));
      }
      Before before = last;
      if (before == null || !before.commit().equals(commit) || !before.stamp().equals(stamp)) {
        before = new Before(commit, stamp, new Scorer(checked.before(), read.logs()).score());
        last = before;
      }
      List<LabelledLog> logs = read.logs();
      if (checked.boot().isPresent()) {
        logs = with(logs, checked.boot().get());
      }
      Score after = new Scorer(checked.base(), logs).score();
      return new Trial(
          false,
          Optional.of(Effect.between(checked.before(), before.score(), checked.base(), after)),
          "");
    } catch (IOException | RuntimeException e) {
      // The edge of a thread: whoever waits for the result has to be told.
      return failed("It could not be measured: " + e.getMessage());
    }
  }

  /** The boots with one more, or with another in place of the one of its name. */
  private static List<LabelledLog> with(List<LabelledLog> logs, LabelledLog boot) {
    List<LabelledLog> all = new ArrayList<>(logs);
    all.removeIf(log -> log.label().name().equals(boot.label().name()));
    all.add(boot);
    return all;
  }

  private static Trial failed(String why) {
    return new Trial(false, Optional.empty(), why);
  }

  /** Changes when any labelled boot does. */
  private String stamp() throws IOException {
    if (!hasBoots()) {
      return "";
    }
    StringBuilder stamp = new StringBuilder();
    try (Stream<Path> files = Files.list(boots)) {
      for (Path file : files.sorted().toList()) {
        stamp
            .append(file.getFileName())
            .append(' ')
            .append(Files.size(file))
            .append(' ')
            .append(Files.getLastModifiedTime(file).toMillis())
            .append('\n');
      }
    }
    return stamp.toString();
  }

  private static String key(String commit, String stamp, EntryName entry, String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(
          (commit + "\n" + stamp + "\n" + entry.path() + "\n").getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      // Every Java platform is required to have SHA-256.
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
