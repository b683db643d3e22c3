package standstill.rank;

import java.util.Set;
import standstill.base.Stage;
import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * A sign after which the boot went on to stages where its fault stops no boots, or after which the
 * last stage ended well, was probably not what stopped it: its exponent shrinks by {@code
 * passed-by} for each.
 */
final class PassedBy {
  static final String NAME = "passed-by";

  private final double factor;

  PassedBy(Model model, Corrections corrections) {
    this.factor = corrections.on(NAME) ? model.number("passed-by") : 1;
  }

  /**
   * The exponent of a sign.
   *
   * @param stops stages in which the hypothesis may stop boots
   */
  double exponent(Seen seen, Set<Stage> stops, Trace trace) {
    if (seen.hits().isEmpty() || !trace.known()) {
      return 1;
    }
    int last = seen.last();
    // What lets the boot go on to its end is not refuted by a stage that ended well.
    boolean goesOn = stops.contains(Stage.DONE);
    int passed =
        !goesOn && trace.endedAt().isPresent() && last < trace.endedAt().getAsInt() ? 1 : 0;
    if (!stops.contains(trace.stage())) {
      passed += Math.max(0, trace.stage().ordinal() - trace.stageAt().get(last).ordinal());
    }
    return Math.pow(factor, passed);
  }
}
