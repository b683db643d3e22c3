package standstill.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.Milestone;
import standstill.base.Stage;

/**
 * Divides what was read into starts of the machine.
 *
 * <p>The family says at which lines a boot begins, in the order of a boot: firmware, loader,
 * kernel. Such a line begins a new boot when the one under way is already past it: it has shown a
 * later beginning or the same one, its kernel's clock has run, or it has reached user space. So
 * firmware, loader and kernel stay together, and a second kernel (a restart, a crash kernel) is a
 * boot of its own. A kernel clock that falls back to zero and the separators of a journal divide as
 * well.
 */
final class Boots {
  /** Seconds that a boot must have run before a clock back at zero means another one. */
  private static final double HAS_RUN = 5;

  private static final double AT_START = 0.5;
  private static final double HAS_RUN_BY_CALENDAR = 60;
  private static final int LOOK_BACK = 400;

  private final List<Entry> entries;
  private final @Nullable Family family;
  private final List<Integer> starts = new ArrayList<>();
  private int start;
  private boolean kernelBegun;
  private boolean kernelClock;
  private final Map<String, Integer> begun = new HashMap<>();
  private double longest;
  private double firstClock = Double.NaN;
  private double lastClock = Double.NaN;
  private String bootId = "";

  private Boots(List<Entry> entries, @Nullable Family family) {
    this.entries = entries;
    this.family = family;
  }

  static List<Boot> of(List<Entry> entries, @Nullable Family family) {
    return new Boots(entries, family).divide();
  }

  private List<Boot> divide() {
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = entries.get(i);
      int begin = beginOf(entry);
      if (i > start && beginsBoot(i, entry, begin)) {
        starts.add(start);
        startAt(begin >= 0 ? backToClear(i) : i);
      }
      note(i, entry, begin);
    }
    List<Boot> boots = new ArrayList<>();
    if (!entries.isEmpty()) {
      starts.add(start);
    }
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : entries.size();
      boots.add(Times.boot(i + 1, entries.subList(starts.get(i), end), i + 1 < starts.size()));
    }
    return boots;
  }

  private void startAt(int index) {
    start = index;
    kernelBegun = false;
    kernelClock = false;
    begun.clear();
    longest = 0;
    firstClock = Double.NaN;
    lastClock = Double.NaN;
    bootId = "";
  }

  private void note(int index, Entry entry, int begin) {
    if (begin >= 0) {
      kernelBegun |= isKernel(begin);
      begun.put(entry.message(), index);
    }
    Prefix prefix = entry.prefix();
    kernelClock |= prefix.seconds().isPresent();
    if (prefix.seconds().isPresent() && !prefix.since()) {
      longest = Math.max(longest, prefix.seconds().getAsDouble());
    }
    if (!Double.isNaN(prefix.clock())) {
      firstClock = Double.isNaN(firstClock) ? prefix.clock() : firstClock;
      lastClock = prefix.clock();
    }
    if (!entry.bootId().isEmpty()) {
      bootId = entry.bootId();
    }
  }

  private boolean beginsBoot(int index, Entry entry, int begin) {
    if (isSeparator(entry)) {
      return !onlySeparators(start, index);
    }
    if (onlySeparators(start, index)) {
      return false;
    }
    if (!entry.bootId().isEmpty() && !bootId.isEmpty() && !entry.bootId().equals(bootId)) {
      return true;
    }
    return begin >= 0 ? isPast(index, entry, begin) : fellBack(index, entry);
  }

  /** Whether the boot under way is already past this beginning. */
  private boolean isPast(int index, Entry entry, int begin) {
    Integer same = begun.get(entry.message());
    if (same != null && same < index - 1) {
      return true;
    }
    boolean kernel = isKernel(begin);
    if (kernel ? kernelBegun : kernelBegun || kernelClock) {
      return true;
    }
    return longest > HAS_RUN
        || lastClock - firstClock > HAS_RUN_BY_CALENDAR
        || reachedUserland(index);
  }

  private boolean isKernel(int begin) {
    return family != null && begin == family.begins().size() - 1;
  }

  /** A line of the kernel's first moment, after the boot has run for a while. */
  private boolean fellBack(int index, Entry entry) {
    Prefix prefix = entry.prefix();
    if (prefix.seconds().isEmpty() || prefix.since() || longest <= HAS_RUN) {
      return false;
    }
    double seconds = prefix.seconds().getAsDouble();
    if (seconds == 0) {
      return true;
    }
    if (seconds >= AT_START) {
      return false;
    }
    int end = Math.min(entries.size(), index + 30);
    for (int i = index + 1; i < end; i++) {
      if (beginOf(entries.get(i)) >= 0) {
        return true;
      }
    }
    return false;
  }

  /** Whether a line since the boot's beginning proves user space. */
  private boolean reachedUserland(int index) {
    if (family == null) {
      return false;
    }
    int from = Math.max(start, index - LOOK_BACK);
    for (int i = index - 1; i >= from; i--) {
      for (Milestone milestone : family.milestones()) {
        if (milestone.stage().isAfter(Stage.KERNEL)
            && milestone.line().foundIn(Recogniser.bounded(entries.get(i).message()))) {
          return true;
        }
      }
    }
    return false;
  }

  /** The firmware clears the screen before its first word: lines since then belong to the boot. */
  private int backToClear(int index) {
    for (int i = index; i > start && i > index - 40; i--) {
      if (entries.get(i).piece().afterClear()) {
        return i;
      }
      if (entries.get(i - 1).prefix().isPresent()) {
        break;
      }
    }
    return index;
  }

  private int beginOf(Entry entry) {
    if (family != null) {
      String message = Recogniser.bounded(entry.message());
      for (int i = family.begins().size() - 1; i >= 0; i--) {
        Example begin = family.begins().get(i);
        boolean possible = entry.prefix().seconds().isEmpty() || isKernel(i);
        if (possible && Recogniser.mayMatch(begin, message) && begin.line().foundIn(message)) {
          return i;
        }
      }
    }
    return -1;
  }

  private boolean onlySeparators(int from, int to) {
    for (int i = from; i < to; i++) {
      if (!isSeparator(entries.get(i)) && !isHeading(entries.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** What a journal prints between boots. */
  private static boolean isSeparator(Entry entry) {
    String text = entry.message();
    return text.length() < 80
        && text.endsWith("-")
        && (text.startsWith("-- Boot ")
            || text.startsWith("-- Reboot --")
            || text.startsWith("- Boot ")
            || text.startsWith("- Reboot -"));
  }

  /** What a journal prints before its first line. */
  private static boolean isHeading(Entry entry) {
    String text = entry.message();
    return text.startsWith("-- Logs begin at ") || text.startsWith("-- Journal begins at ");
  }
}
