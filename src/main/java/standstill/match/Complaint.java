package standstill.match;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.text.Pattern;

/**
 * A line near the stop that speaks of trouble and is neither a false trail nor a milestone.
 *
 * @param index place of the line in the boot, from 0
 * @param shape the message with its numbers replaced: lines of one shape are one complaint
 */
public record Complaint(int index, String shape) {
  /** Lines before the end of the boot in which trouble is likely to be about the stop. */
  private static final int NEAR_THE_STOP = 60;

  private static final int ERROR_LEVEL = 3;
  private static final int WARNING_LEVEL = 4;

  private static final Pattern TROUBLE =
      Pattern.known(
          "(?i)\\b(?:errors?|fail(?:ed|s|ure)?|fatal|panic|unable|can(?:no|')t|could not|not found"
              + "|timed? ?out|bug|refused|denied|invalid|corrupt(?:ed|ion)?|no such|missing|out of memory|abort(?:ed|ing)?"
              + "|oops|rejected|dead|stuck|unsupported|not supported|halted|giving up|gave up)\\b");

  /** Lines of a register and stack dump: what happened stands above them. */
  private static final Pattern DUMP =
      Pattern.known(
          "^\\s*(?:\\? )?[\\w.]+\\+0x[0-9a-f]+/0x[0-9a-f]+|^-+\\[ (?:end|cut)|^ *</?[A-Z]+>$");

  /** Whether a line is worth showing as trouble: by its level, or by its words. */
  public static boolean speaksOfTrouble(LogLine line) {
    return line.level().isPresent() && line.level().getAsInt() <= WARNING_LEVEL
        || TROUBLE.foundIn(line.message());
  }

  /** Those of a boot, in the order of the lines. */
  static List<Complaint> of(Boot boot, BitSet harmless) {
    List<LogLine> lines = boot.lines();
    List<Complaint> found = new ArrayList<>();
    for (int i = Math.max(0, lines.size() - NEAR_THE_STOP); i < lines.size(); i++) {
      LogLine line = lines.get(i);
      boolean error = line.level().isPresent() && line.level().getAsInt() <= ERROR_LEVEL;
      if (!harmless.get(i)
          && (error || TROUBLE.foundIn(line.message()))
          && !DUMP.foundIn(line.message())) {
        found.add(new Complaint(i, line.shape()));
      }
    }
    return found;
  }
}
