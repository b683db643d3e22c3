package standstill.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.Marks;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/** The lines of a family by which one boot is told from the next. */
final class BootLines {
  private static final int LONGEST_SEPARATOR = 200;

  private final List<Example> begins;

  /** How many of them are the firmware's and loader's; the kernel's own follow. */
  private final int first;

  private final PatternSet userland;
  private final List<Pattern> separators;
  private final List<Pattern> headings;

  /**
   * The lines for texts of one family.
   *
   * @param all the families, since a journal's own lines may stand in any text
   * @param family the text's; empty when it isn't known
   */
  BootLines(List<Family> all, Optional<Family> family) {
    begins =
        Stream.concat(
                family.stream().flatMap(f -> f.begins().stream()),
                family.stream().flatMap(f -> f.kernelBegins().stream()))
            .toList();
    first = family.map(f -> f.begins().size()).orElse(0);
    userland =
        new PatternSet(
            family.stream()
                .flatMap(f -> f.milestones().stream())
                .filter(milestone -> milestone.stage().isAfter(Stage.KERNEL))
                .map(Milestone::line)
                .toList());
    separators = lines(all, Marks::separators);
    headings = lines(all, Marks::headings);
  }

  private static List<Pattern> lines(List<Family> all, Function<Marks, List<Example>> sort) {
    return all.stream()
        .flatMap(family -> sort.apply(family.marks()).stream())
        .map(Example::line)
        .distinct()
        .toList();
  }

  /** Whether an entry is what a journal prints between boots. */
  boolean isSeparator(Entry entry) {
    return isAnyOf(separators, entry);
  }

  /** Whether an entry is what a journal prints above its first line. */
  boolean isHeading(Entry entry) {
    return isAnyOf(headings, entry);
  }

  private static boolean isAnyOf(List<Pattern> lines, Entry entry) {
    String text = entry.message();
    if (text.isEmpty() || text.length() > LONGEST_SEPARATOR) {
      return false;
    }
    for (Pattern line : lines) {
      if (line.mayBeginWith(text.charAt(0)) && line.findAtStart(text).isPresent()) {
        return true;
      }
    }
    return false;
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
    return begin >= first;
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
