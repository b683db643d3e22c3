package standstill.log;

import java.util.List;
import standstill.base.Example;
import standstill.base.Family;
import standstill.text.Pattern;

/**
 * Finds where a kernel line cuts into another line.
 *
 * <p>What a stamp of the kernel looks like is only what makes a place worth a look; whether it is a
 * stamp is for the line forms to say.
 */
final class CutIns {
  /** No stamp is longer, so the engine needn't see more of a line. */
  private static final int LONGEST_STAMP = 64;

  private final List<Pattern> stamps;

  CutIns(List<Family> families) {
    stamps =
        families.stream()
            .flatMap(family -> family.marks().stamps().stream())
            .map(Example::line)
            .distinct()
            .toList();
  }

  /** Offset of the next place that looks like a stamp, or -1. */
  int next(String text, int from) {
    for (int at = from; at < text.length(); at++) {
      if (isStamp(text, at)) {
        return at;
      }
    }
    return -1;
  }

  /** Whether a stamp begins at an offset. */
  boolean isStamp(String text, int at) {
    for (Pattern stamp : stamps) {
      if (stamp.mayBeginWith(text.charAt(at))
          && stamp
              .findAtStart(text.substring(at, Math.min(text.length(), at + LONGEST_STAMP)))
              .isPresent()) {
        return true;
      }
    }
    return false;
  }
}
