package standstill.edit;

/**
 * A labelled boot as one text, so that it is put forward, compared and settled like any entry: its
 * label, a mark, and its log. In git it is two files. The first mark counts, so that a log can't
 * reach into the label, whatever stands in it.
 *
 * @param label YAML, ends with a line end unless empty
 * @param log as it is kept
 */
public record BootText(String label, String log) {
  /** Longest accepted boot, label and log together, in characters. */
  public static final int LONGEST = 1 << 20;

  /** Most lines of a log; a second person has to read them. */
  public static final int MOST_LINES = 20_000;

  /** The line between the two; a label has no such line. */
  public static final String MARK = "=== the log ===\n";

  /** A text taken apart; without a mark it is all label. */
  public static BootText of(String text) {
    int at = text.startsWith(MARK) ? 0 : text.indexOf("\n" + MARK) + 1;
    return at == 0 && !text.startsWith(MARK)
        ? new BootText(text, "")
        : new BootText(text.substring(0, at), text.substring(at + MARK.length()));
  }

  /** The one text. */
  public String joined() {
    return label + (label.isEmpty() || label.endsWith("\n") ? "" : "\n") + MARK + log;
  }
}
