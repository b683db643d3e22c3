package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.jspecify.annotations.Nullable;
import standstill.audit.Audit;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * What the audit says of the base in use. It takes seconds, so that it is made when somebody asks
 * for the first time, on a thread of its own, and once for each base and day. Thread-safe.
 */
public final class Findings {
  private final Clock clock;
  private @Nullable Made made;

  /** What was made, or is being made, and for what. */
  private record Made(Base base, LocalDate day, CompletableFuture<List<Finding>> findings) {
    boolean isFor(Base other, LocalDate today) {
      // The same edition, not an equal one: comparing two bases takes longer than it saves.
      return base == other && day.equals(today);
    }
  }

  /** Findings, counted from the clock's day. */
  public Findings(Clock clock) {
    this.clock = clock;
  }

  /**
   * The findings; empty while they are being made.
   *
   * @param base the base in use; it has no errors in its files
   * @param folder the folder that it was read from, whose labelled boots are looked at too
   */
  public synchronized Optional<List<Finding>> of(Base base, Optional<Path> folder) {
    LocalDate today = LocalDate.now(clock);
    Made current = made;
    if (current == null || !current.isFor(base, today)) {
      CompletableFuture<List<Finding>> begun = new CompletableFuture<>();
      Thread thread =
          new Thread(
              () -> begun.completeAsync(() -> find(base, folder, today), Runnable::run), "audit");
      thread.setDaemon(true);
      thread.start();
      current = new Made(base, today, begun);
      made = current;
    }
    try {
      return Optional.ofNullable(current.findings().getNow(null));
    } catch (CompletionException e) {
      made = null; // Whoever asks next starts anew.
      throw e;
    }
  }

  private static List<Finding> find(Base base, Optional<Path> folder, LocalDate today) {
    List<Finding> findings = new ArrayList<>();
    BootFolder.Boots boots = new BootFolder.Boots(List.of(), List.of());
    Optional<Path> logs = folder.map(f -> f.resolve("boots")).filter(Files::isDirectory);
    if (logs.isPresent()) {
      try {
        boots = BootFolder.read(logs.get());
      } catch (IOException e) {
        findings.add(
            Finding.ofFile(
                Problem.error(
                    Position.ofFile(logs.get().toString()), "labelled boots can't be read", "")));
      }
    }
    boots.problems().forEach(p -> findings.add(Finding.ofFile(p)));
    findings.addAll(Audit.findings(new Loaded(base, List.of()), boots.logs(), today));
    findings.sort(null);
    return List.copyOf(findings);
  }
}
