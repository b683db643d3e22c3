package standstill.log;

import java.util.List;

/**
 * One start of the machine within a log.
 *
 * @param number 1 for the first boot of the paste
 * @param lines its lines in order; blank ones are left out
 */
public record Boot(int number, List<LogLine> lines) {
  public Boot {
    lines = List.copyOf(lines);
  }
}
