package standstill.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import standstill.base.Family;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Finds the stages of a boot.
 *
 * <p>The stage of a line is the furthest one that any milestone up to it proves: drivers go on
 * printing while the root file system is being looked for, so a later device line doesn't take the
 * boot back. One trap: inside an initial ramdisk the same init program may run that the installed
 * system has. Where a line shows that it does ({@link Family#ramdisk}), lines that would otherwise
 * prove user space count for {@code root} until a milestone says that the root stage has ended.
 */
public final class Tracer {
  private static final int GAPS = 3;
  private static final double SHORTEST_GAP = 2.0;
  private static final int LOOPS = 5;
  private static final int FEWEST_REPEATS = 4;
  private static final int FEWEST_READ_OUT = 200;

  private final Family family;
  private final PatternSet milestoneLines;

  /** A tracer for one family. */
  public Tracer(Family family) {
    this.family = family;
    this.milestoneLines =
        new PatternSet(family.milestones().stream().map(Milestone::line).toList());
  }

  /** Traces one boot. */
  public Trace trace(Boot boot) {
    List<LogLine> lines = boot.lines();
    boolean ramdisk = lines.stream().anyMatch(line -> matchesAny(family.ramdisk(), line.message()));
    List<Reached> reached = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    List<Stage> stageAt = new ArrayList<>(lines.size());
    int unknown = 0;
    Map<String, List<Milestone>> byTag = new HashMap<>();
    boolean rootEnded = false;
    boolean stopped = false;
    Stage stage = null;
    for (int i = 0; i < lines.size(); i++) {
      LogLine line = lines.get(i);
      Stage sofar = stage;
      Predicate<Milestone> news =
          m ->
              !seen.contains(m.id())
                  || sofar == null
                  || m.stage().isAfter(sofar)
                  || (m.proves() == Milestone.Proves.STOPS && sofar.isAfter(m.stage()));
      for (Milestone milestone : milestonesOf(line, boot.mayBeTyped(), byTag, news)) {
        if (news.test(milestone)) {
          rootEnded |= endsRoot(milestone);
          Stage proven = capped(milestone.stage(), ramdisk && !rootEnded);
          if (seen.add(milestone.id())) {
            reached.add(new Reached(milestone, proven, i, line.number(), line.seconds()));
          }
          boolean stops = milestone.proves() == Milestone.Proves.STOPS;
          // After a stop only the beginning or the end of a later stage shows that it went on.
          boolean further =
              proven.isAfter(stage == null ? Stage.FIRMWARE : stage)
                  && (!stopped || milestone.proves() != Milestone.Proves.WITHIN);
          if (stage == null || stops || further) {
            stage = proven;
            stopped = stops;
          }
        }
      }
      stageAt.add(stage == null ? Stage.FIRMWARE : stage);
      unknown += stage == null ? 1 : 0;
    }
    // Lines above the first milestone belong to its stage at the latest: a paste begins anywhere.
    if (unknown < stageAt.size()) {
      Collections.fill(stageAt.subList(0, unknown), stageAt.get(unknown));
    }
    Stage last = stage == null ? Stage.KERNEL : stage;
    return new Trace(
        last,
        stage != null,
        reached,
        covers(reached),
        complete(reached, boot),
        gaps(lines),
        loops(lines),
        lines.isEmpty() ? 0 : lines.get(lines.size() - 1).lastNumber(),
        stageAt,
        stopped ? OptionalInt.empty() : goodEnd(reached, last),
        readOut(lines));
  }

  /**
   * Whether a long text has kernel lines alone, each with its stamp and without the tag that a
   * journal gives them. A console shows words of the loader, the ramdisk and the services between
   * them, and nobody photographs so many lines: they were read out of the kernel's buffer by
   * somebody who could give a command.
   */
  private boolean readOut(List<LogLine> lines) {
    String tag = family.marks().kernelTag();
    return !tag.isEmpty()
        && lines.size() >= FEWEST_READ_OUT
        && lines.stream()
            .allMatch(line -> line.seconds().isPresent() && !line.process().equals(tag));
  }

  /** Where the last stage ended well. */
  private static OptionalInt goodEnd(List<Reached> reached, Stage last) {
    return reached.stream()
        .filter(r -> r.stage() == last && r.milestone().proves() == Milestone.Proves.ENDS)
        .mapToInt(Reached::index)
        .findFirst();
  }

  /** Those that the message shows, and those that the tag of the process shows, as 'tag: '. */
  private List<Milestone> milestonesOf(
      LogLine line, boolean typed, Map<String, List<Milestone>> byTag, Predicate<Milestone> news) {
    List<Milestone> shown = milestonesIn(line.message(), typed, news);
    if (line.process().isEmpty()) {
      return shown;
    }
    List<Milestone> ofTag =
        byTag.computeIfAbsent(line.process(), tag -> milestonesIn(tag + ": ", false, m -> true));
    if (ofTag.isEmpty()) {
      return shown;
    }
    List<Milestone> both = new ArrayList<>(shown);
    both.addAll(ofTag);
    return both;
  }

  private List<Milestone> milestonesIn(String text, boolean typed, Predicate<Milestone> wanted) {
    List<Milestone> found = new ArrayList<>();
    milestoneLines.candidates(
        text,
        typed,
        (line, place) -> {
          Milestone milestone = family.milestones().get(place);
          if (wanted.test(milestone) && line.foundIn(text)) {
            found.add(milestone);
          }
        });
    return found;
  }

  private static boolean endsRoot(Milestone milestone) {
    return (milestone.stage() == Stage.ROOT && milestone.proves() == Milestone.Proves.ENDS)
        || (milestone.stage() == Stage.USERLAND && milestone.proves() == Milestone.Proves.BEGINS)
        || (milestone.stage() == Stage.DONE && milestone.proves() != Milestone.Proves.WITHIN);
  }

  private static Stage capped(Stage stage, boolean inRamdisk) {
    return inRamdisk && stage.isAfter(Stage.ROOT) ? Stage.ROOT : stage;
  }

  private static boolean matchesAny(List<Pattern> patterns, String message) {
    for (Pattern pattern : patterns) {
      if (pattern.foundIn(message)) {
        return true;
      }
    }
    return false;
  }

  private static Set<Stage> covers(List<Reached> reached) {
    Set<Stage> covers = EnumSet.noneOf(Stage.class);
    reached.forEach(r -> covers.add(r.stage()));
    return covers;
  }

  /**
   * A stage is complete when its lines are there, and its beginning too: its own first milestone or
   * an earlier stage's line stands before them. Where the paste was cut, nothing is.
   */
  private static Set<Stage> complete(List<Reached> reached, Boot boot) {
    Set<Stage> complete = EnumSet.noneOf(Stage.class);
    if (!boot.cuts().isEmpty()) {
      return complete;
    }
    Stage before = null;
    for (Reached r : reached) {
      boolean begins = r.milestone().proves() == Milestone.Proves.BEGINS;
      if (begins || (before != null && r.stage().isAfter(before)) || complete.contains(r.stage())) {
        complete.add(r.stage());
      }
      before = before == null || r.stage().isAfter(before) ? r.stage() : before;
    }
    return complete;
  }

  private static List<Gap> gaps(List<LogLine> lines) {
    List<Gap> gaps = new ArrayList<>();
    OptionalDouble before = OptionalDouble.empty();
    for (int i = 0; i < lines.size(); i++) {
      OptionalDouble now = lines.get(i).seconds();
      if (now.isPresent()) {
        if (before.isPresent() && now.getAsDouble() - before.getAsDouble() >= SHORTEST_GAP) {
          gaps.add(new Gap(i, lines.get(i).number(), now.getAsDouble() - before.getAsDouble()));
        }
        before = now;
      }
    }
    gaps.sort(Comparator.comparingDouble(Gap::seconds).reversed());
    return gaps.subList(0, Math.min(GAPS, gaps.size()));
  }

  private static List<Loop> loops(List<LogLine> lines) {
    Map<String, int[]> shapes = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      String shape = lines.get(i).shape();
      if (shape.length() >= 8) {
        int[] counted = shapes.get(shape);
        if (counted == null) {
          shapes.put(shape, new int[] {1, i, i});
        } else {
          counted[0]++;
          counted[2] = i;
        }
      }
    }
    List<Loop> loops = new ArrayList<>();
    int tail = lines.size() - Math.max(20, lines.size() / 10);
    for (int[] counted : shapes.values()) {
      if (counted[0] >= FEWEST_REPEATS && counted[2] >= tail) {
        loops.add(
            new Loop(
                lines.get(counted[1]).number(),
                lines.get(counted[2]).number(),
                counted[0],
                lines.get(counted[2]).message()));
      }
    }
    loops.sort(Comparator.comparingInt(Loop::times).reversed());
    return loops.subList(0, Math.min(LOOPS, loops.size()));
  }
}
