package standstill.rank;

import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * A stop is found from the end of a boot backwards: a sign of a stop counts the less the more lines
 * follow it. Its exponent is halved after {@code end-lines} lines, and so on.
 */
final class FarFromEnd {
  static final String NAME = "far-from-end";

  private final double half;

  FarFromEnd(Model model, Corrections corrections) {
    this.half = corrections.on(NAME) ? model.number("end-lines") : Double.POSITIVE_INFINITY;
  }

  /** The exponent of a sign of a stop. */
  double exponent(Seen seen, Trace trace) {
    if (seen.hits().isEmpty()) {
      return 1;
    }
    double after = Math.max(0, trace.stageAt().size() - 1 - seen.last());
    return 1 / (1 + after / half);
  }
}
