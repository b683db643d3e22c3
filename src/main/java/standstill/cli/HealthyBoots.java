package standstill.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import standstill.base.Label;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.report.Diagnoser;
import standstill.store.BootFolder;

/** Messages of the boots beside a base that are labelled healthy. */
final class HealthyBoots {
  private HealthyBoots() {}

  /** The messages, a list for each boot; empty when no boots stand beside the base. */
  static List<List<String>> beside(Optional<Path> base, Diagnoser diagnoser) {
    Optional<Path> boots = base.map(b -> b.resolve("boots")).filter(Files::isDirectory);
    if (boots.isEmpty()) {
      return List.of();
    }
    try {
      return BootFolder.read(boots.get()).logs().stream()
          .filter(log -> log.label().label().equals(Label.HEALTHY))
          .map(log -> messages(diagnoser.read(log.bytes())))
          .toList();
    } catch (IOException e) {
      throw new Failure(
          ExitCode.UNREADABLE, "the labelled logs could not be read: " + e.getMessage());
    }
  }

  private static List<String> messages(BootLog log) {
    return log.boots().stream()
        .flatMap(boot -> boot.lines().stream())
        .map(LogLine::message)
        .toList();
  }
}
