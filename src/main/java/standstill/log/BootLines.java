package standstill.log;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/** The lines of a family by which one boot is told from the next. */
final class BootLines {
  /** Those of a text of which the family isn't known. */
  static final BootLines NONE = new BootLines(List.of(), List.of());

  private final List<Example> begins;
  private final PatternSet userland;

  BootLines(Family family) {
    this(
        family.begins(),
        family.milestones().stream()
            .filter(milestone -> milestone.stage().isAfter(Stage.KERNEL))
            .map(Milestone::line)
            .toList());
  }

  private BootLines(List<Example> begins, List<Pattern> userland) {
    this.begins = begins;
    this.userland = new PatternSet(userland);
  }

  /** Which of the family's beginnings an entry is, the latest if it is several; -1 for none. */
  int beginOf(Entry entry) {
    String message = Recogniser.bounded(entry.message());
    for (int i = begins.size() - 1; i >= 0; i--) {
      Example begin = begins.get(i);
      boolean possible = entry.prefix().seconds().isEmpty() || isKernel(i);
      if (possible && Recogniser.mayMatch(begin.line(), message) && begin.line().foundIn(message)) {
        return i;
      }
    }
    return -1;
  }

  /** Whether a beginning is the kernel's own. */
  boolean isKernel(int begin) {
    return begin == begins.size() - 1 && begin >= 0;
  }

  /** Whether an entry proves that the boot came further than its kernel. */
  boolean provesUserland(Entry entry) {
    String message = Recogniser.bounded(entry.message());
    List<Integer> found = new ArrayList<>(1);
    userland.candidates(
        message,
        false,
        (line, place) -> {
          if (found.isEmpty() && line.foundIn(message)) {
            found.add(place);
          }
        });
    return !found.isEmpty();
  }
}
