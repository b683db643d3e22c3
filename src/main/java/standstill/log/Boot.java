package standstill.log;

import java.util.List;

/**
 * One start of the machine within a log.
 *
 * @param number 1 for the first boot of the paste
 * @param lines its lines in order; blank ones are left out
 * @param cuts numbers of the lines before which the person who pasted left something out, in order
 * @param followed whether another start of the machine follows in the same text
 */
public record Boot(int number, List<LogLine> lines, List<Integer> cuts, boolean followed) {
  /** Most lines that anybody types from a photograph. */
  private static final int LONGEST_TYPED = 60;

  public Boot {
    lines = List.copyOf(lines);
    cuts = List.copyOf(cuts);
  }

  /** Whether it is so short that a person may have typed it. */
  public boolean mayBeTyped() {
    return lines.size() <= LONGEST_TYPED;
  }

  /** A boot in which nothing was left out. */
  public Boot(int number, List<LogLine> lines) {
    this(number, lines, List.of(), false);
  }
}
