package standstill.rank;

import java.util.List;
import standstill.match.Seen;

/**
 * One reason for a hypothesis's weight. The product of all factors' values is its weight.
 *
 * @param kind what sort of reason
 * @param value what the weight was multiplied by
 * @param why in plain words
 * @param signs the signs behind it: of one event, the most telling first; empty for the prior and
 *     the stage
 */
public record Factor(Kind kind, double value, String why, List<Seen> signs) {
  public Factor {
    signs = List.copyOf(signs);
  }

  /** Sorts of reasons. */
  public enum Kind {
    /** How common the cause is. */
    PRIOR,
    /** How often the cause ends in the likeliest stop. */
    STOP,
    /** It stands for a cause of a stop that the base does not list. */
    ANOTHER,
    /** How it fits the stage where progress ended. */
    STAGE,
    /** A sign that was seen. */
    SEEN,
    /** A sign that should have been seen in the part that the paste covers. */
    ABSENT,
    /** Trouble near the stop that the fault doesn't account for. */
    LEFT_OVER,
    /** A general fault that steps back behind a specific one. */
    STEPS_BACK,
    /** An answer that a person gave. */
    ANSWER
  }
}
