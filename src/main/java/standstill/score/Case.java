package standstill.score;

import java.util.Optional;
import java.util.Set;
import standstill.base.Label;
import standstill.match.Matches;
import standstill.trace.Trace;

/**
 * A labelled log, read and matched once, so that it can be ranked many times.
 *
 * @param source name of its source
 * @param label what is known of it
 * @param family its family
 * @param seen trace and matches; empty when the text was not taken for a boot log
 * @param stops ids of the stops that are right; empty where nobody says
 */
record Case(String source, Label label, String family, Optional<Seen> seen, Set<String> stops) {
  Case {
    stops = Set.copyOf(stops);
  }

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
