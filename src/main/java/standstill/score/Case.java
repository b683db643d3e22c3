package standstill.score;

import java.util.Optional;
import standstill.base.Label;
import standstill.match.Matches;
import standstill.trace.Trace;

/**
 * A labelled log, read and matched once, so that it can be ranked many times.
 *
 * @param label what is known of it
 * @param family its family
 * @param seen trace and matches; empty when the text was not taken for a boot log
 */
record Case(Label label, String family, Optional<Seen> seen) {
  /** What ranking needs. */
  record Seen(Trace trace, Matches matches) {}

  /**
   * Boots of one group never stand on both sides of a split: those of one fault, and each healthy
   * one alone.
   */
  String group() {
    return label.isFault() ? label.label() : label.name();
  }
}
