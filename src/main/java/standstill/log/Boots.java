package standstill.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Divides what was read into starts of the machine.
 *
 * <p>The family says at which lines a boot begins, in the order of a boot: firmware, loader,
 * kernel. Such a line begins a new boot when the one under way is already past it: it has shown a
 * later beginning or the same one, its kernel's clock has run, or it has reached user space. So
 * firmware, loader and kernel stay together, and a second kernel (a restart, a crash kernel) is a
 * boot of its own. A kernel clock that falls back to zero and the separators of a journal divide as
 * well.
 *
 * <p>No entry is looked at more often than a fixed number of times, whatever the entries are.
 */
final class Boots {
  /** Most boots that are kept of a text, the last ones. */
  static final int MOST = 500;

  /** Seconds that a boot must have run before a clock back at zero means another one. */
  private static final double HAS_RUN = 5;

  private static final double AT_START = 0.5;
  private static final double HAS_RUN_BY_CALENDAR = 60;
  private static final int LOOK_BACK = 400;
  private static final int LOOK_AHEAD = 30;
  private static final int BACK_TO_CLEAR = 40;

  private final List<Entry> entries;
  private final BootLines lines;

  /** For each entry, which beginning it is. */
  private final int[] beginnings;

  private final List<Integer> starts = new ArrayList<>();
  private int start;

  /** Whether anything but separators and headings stands in the boot under way. */
  private boolean filled;

  private boolean kernelBegun;
  private boolean kernelClock;
  private Map<String, Integer> begun = new HashMap<>();
  private double longest;
  private double firstClock = Double.NaN;
  private double lastClock = Double.NaN;
  private String bootId = "";

  /** Place of the last entry known to prove user space, and up to where was looked. */
  private int inUserland = -1;

  private int lookedUpTo;

  private Boots(List<Entry> entries, BootLines lines) {
    this.entries = entries;
    this.lines = lines;
    this.beginnings = entries.stream().mapToInt(lines::beginOf).toArray();
  }

  /**
   * What a text was divided into.
   *
   * @param kept its last boots, at most {@link #MOST}
   * @param leftOut how many there are before them
   */
  record Division(List<Boot> kept, int leftOut) {}

  static Division of(List<Entry> entries, BootLines lines) {
    return new Boots(entries, lines).divide();
  }

  private Division divide() {
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = entries.get(i);
      int begin = beginnings[i];
      if (i > start && beginsBoot(i, entry, begin)) {
        starts.add(start);
        startAt(begin >= 0 ? backToClear(i) : i, i);
      }
      note(i, entry, begin);
    }
    if (!entries.isEmpty()) {
      starts.add(start);
    }
    int leftOut = Math.max(0, starts.size() - MOST);
    List<Boot> boots = new ArrayList<>();
    for (int i = leftOut; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : entries.size();
      boots.add(
          Times.boot(i - leftOut + 1, entries.subList(starts.get(i), end), i + 1 < starts.size()));
    }
    return new Division(boots, leftOut);
  }

  /** Begins a boot; entries between the index and the one at hand belong to it already. */
  private void startAt(int index, int atHand) {
    start = index;
    filled = false;
    for (int i = index; i < atHand; i++) {
      filled = filled || isSubstance(entries.get(i));
    }
    kernelBegun = false;
    kernelClock = false;
    // Not cleared: that takes as long as the boot with the most beginnings so far.
    begun = new HashMap<>();
    longest = 0;
    firstClock = Double.NaN;
    lastClock = Double.NaN;
    bootId = "";
  }

  private void note(int index, Entry entry, int begin) {
    filled = filled || isSubstance(entry);
    if (begin >= 0) {
      kernelBegun |= lines.isKernel(begin);
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
    if (!filled) {
      return false;
    }
    if (lines.isSeparator(entry)) {
      return true;
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
    boolean kernel = lines.isKernel(begin);
    if (kernel ? kernelBegun : kernelBegun || kernelClock) {
      return true;
    }
    return longest > HAS_RUN
        || lastClock - firstClock > HAS_RUN_BY_CALENDAR
        || reachedUserland(index);
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
    int end = Math.min(entries.size(), index + LOOK_AHEAD);
    for (int i = index + 1; i < end; i++) {
      if (beginnings[i] >= 0) {
        return true;
      }
    }
    return false;
  }

  /** Whether a line since the boot's beginning, and not too far back, proves user space. */
  private boolean reachedUserland(int index) {
    int from = Math.max(start, index - LOOK_BACK);
    for (int i = index - 1; i >= Math.max(from, lookedUpTo); i--) {
      if (lines.provesUserland(entries.get(i))) {
        inUserland = i;
        break;
      }
    }
    lookedUpTo = index;
    return inUserland >= from;
  }

  /** The firmware clears the screen before its first word: lines since then belong to the boot. */
  private int backToClear(int index) {
    for (int i = index; i > start && i > index - BACK_TO_CLEAR; i--) {
      if (entries.get(i).piece().afterClear()) {
        return i;
      }
      if (entries.get(i - 1).prefix().isPresent()) {
        break;
      }
    }
    return index;
  }

  private boolean isSubstance(Entry entry) {
    return !lines.isSeparator(entry) && !lines.isHeading(entry);
  }
}
