package standstill.log;

import java.util.List;

/**
 * A paste or file, read.
 *
 * @param lineCount lines of the input, separated by LF or CRLF
 * @param rawLines the input's lines as decoded text, in order and without line ends, control
 *     characters still in; element 0 is line 1; size is {@code lineCount}
 * @param boots the boots found, at least one unless the text is empty
 * @param family id of the family that was recognised, or empty
 * @param reasonNotALog why this is not a boot log; empty when it is one
 * @param limits what of the text was not followed or kept because there is too much of it, as
 *     sentences; empty for nearly every text
 */
public record BootLog(
    int lineCount,
    List<String> rawLines,
    List<Boot> boots,
    String family,
    String reasonNotALog,
    List<String> limits) {
  public BootLog {
    rawLines = List.copyOf(rawLines);
    boots = List.copyOf(boots);
    limits = List.copyOf(limits);
  }

  /** The same text, taken for a boot log of a family. */
  public BootLog takenFor(String otherFamily) {
    return new BootLog(lineCount, rawLines, boots, otherFamily, "", limits);
  }

  /** Whether there is anything to diagnose. */
  public boolean isBootLog() {
    return reasonNotALog.isEmpty();
  }
}
