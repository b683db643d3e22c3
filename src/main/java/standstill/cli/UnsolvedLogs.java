package standstill.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.match.Complaint;
import standstill.mine.Stray;
import standstill.report.Diagnoser;
import standstill.report.Sighting;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * Logs whose cause nobody knows yet, and their lines that nothing in the base explains. Of a log
 * with several boots the last one counts, as in a diagnosis.
 */
final class UnsolvedLogs {
  private static final int MOST_FILES = 2_000;
  private static final long MOST_BYTES = 1L << 30;

  private final Diagnoser diagnoser;
  private final List<String> leftOut = new ArrayList<>();
  private int logs;
  private int lines;
  private int strays;

  UnsolvedLogs(Diagnoser diagnoser) {
    this.diagnoser = diagnoser;
  }

  /** The log that was named, or those in the folder that was named. */
  static List<Path> of(Path place) {
    if (!Files.isDirectory(place)) {
      return List.of(place);
    }
    try (Stream<Path> list = Files.list(place)) {
      List<Path> found =
          list.filter(p -> p.getFileName().toString().matches(".*\\.(?:log|log\\.gz|txt)"))
              .filter(Files::isRegularFile)
              .sorted()
              .limit(MOST_FILES + 1L)
              .toList();
      if (found.isEmpty()) {
        throw new Failure(
            ExitCode.UNREADABLE, "no log in " + place + "; its names end in .log, .log.gz or .txt");
      }
      if (found.size() > MOST_FILES) {
        throw new Failure(
            ExitCode.UNREADABLE,
            place + " holds more than " + MOST_FILES + " logs; give them in several folders");
      }
      return found;
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, place + " could not be read: " + e.getMessage());
    }
  }

  /**
   * Reads logs and hands on each line that nothing explains. A log that can't be read is left out
   * and noted.
   */
  void read(List<Path> files, Consumer<Stray> taker) {
    boolean terminal = Output.showsProgress();
    long bytes = 0;
    for (int i = 0; i < files.size(); i++) {
      Path file = files.get(i);
      if (terminal) {
        Output.progress("reading log " + (i + 1) + " of " + files.size(), i + 1 == files.size());
      }
      if (bytes > MOST_BYTES) {
        leftOut.add(file + ": more than " + (MOST_BYTES >> 20) + " MB stand before it");
        continue;
      }
      try {
        byte[] text = DiagnoseCommand.InputFile.read(file.toString());
        bytes += text.length;
        read(file.toString(), diagnoser.read(text), taker);
      } catch (Failure e) {
        leftOut.add(e.getMessage());
      }
    }
  }

  private void read(String name, BootLog log, Consumer<Stray> taker) {
    Optional<Sighting> sighting = diagnoser.sight(log, 0);
    if (sighting.isEmpty()) {
      String reason = log.reasonNotALog();
      leftOut.add(name + ": " + (reason.isEmpty() ? "its kernel is not in the base" : reason));
      return;
    }
    logs++;
    lines += sighting.get().boot().lines().size();
    for (Stray stray : strays(name, sighting.get())) {
      strays++;
      taker.accept(stray);
    }
  }

  /** The lines of one boot that nothing explains. */
  static List<Stray> strays(String name, Sighting sighting) {
    List<LogLine> all = sighting.boot().lines();
    BitSet explained = sighting.matches().explained();
    boolean stalled = sighting.trace().stage() != Stage.DONE;
    List<Stray> strays = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (!explained.get(i)) {
        LogLine line = all.get(i);
        strays.add(
            new Stray(
                name,
                line.number(),
                line.message(),
                stageAt(sighting.trace(), i),
                Complaint.speaksOfTrouble(line),
                stalled ? all.size() - 1 - i : Stray.CAME_THROUGH));
      }
    }
    return strays;
  }

  /**
   * The stage at a place of the boot. A paste may begin anywhere: what stands above its first
   * milestone belongs to that one's stage, unless the stage only begins there.
   */
  static Stage stageAt(Trace trace, int index) {
    if (trace.milestones().isEmpty()) {
      return trace.stage();
    }
    Reached first = trace.milestones().get(0);
    boolean begins = first.milestone().proves() == Milestone.Proves.BEGINS;
    return index < first.index() && !begins ? first.stage() : trace.stageAt().get(index);
  }

  /** How many logs were read. */
  int logs() {
    return logs;
  }

  /** How many lines they have. */
  int lines() {
    return lines;
  }

  /** How many of them nothing explains. */
  int strays() {
    return strays;
  }

  /** Logs that were left out, each with the reason. */
  List<String> leftOut() {
    return List.copyOf(leftOut);
  }
}
