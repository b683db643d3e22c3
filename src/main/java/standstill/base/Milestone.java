package standstill.base;

import java.util.List;
import standstill.text.Pattern;

/**
 * A line that proves where a boot stands.
 *
 * @param id name, unique in its family
 * @param stage the stage that it speaks of
 * @param proves whether the stage begins, ends, or is under way with it
 * @param title what happened, for people
 * @param line matched against the message of a line
 * @param seen texts that it must match
 */
public record Milestone(
    String id, Stage stage, Proves proves, String title, Pattern line, List<String> seen) {
  public Milestone {
    seen = List.copyOf(seen);
  }

  /** What the line proves about the stage. */
  public enum Proves {
    /** The stage begins here. */
    BEGINS,
    /** The stage is under way. */
    WITHIN,
    /** The stage ends well here. */
    ENDS,
    /** The boot goes no further than this stage, whatever stood before. */
    STOPS
  }
}
