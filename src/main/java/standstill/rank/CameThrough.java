package standstill.rank;

import standstill.trace.Trace;

/**
 * What speaks for a boot that came through although no line says so: the text was read out of the
 * kernel's buffer by somebody who could give a command, or the last stage ended well.
 */
final class CameThrough {
  static final String NAME = "came-through";

  private final boolean on;
  private final double readOut;
  private final double endedWell;

  CameThrough(Model model, Corrections corrections) {
    this.on = corrections.on(NAME);
    this.readOut = model.number("read-out");
    this.endedWell = model.number("ended-well");
  }

  /** What the odds that nothing stopped are multiplied by. */
  double factor(Trace trace) {
    if (!on) {
      return 1;
    }
    return (trace.readOut() ? readOut : 1) * (trace.endedAt().isPresent() ? endedWell : 1);
  }
}
