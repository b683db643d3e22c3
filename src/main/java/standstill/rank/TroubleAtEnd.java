package standstill.rank;

import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.match.Matches;
import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * A boot that came through may still have a fault that leaves its prompt without use: a decisive
 * sign of such a fault in the installed system, or any decisive sign on the last lines, speaks
 * against "nothing stopped".
 */
final class TroubleAtEnd {
  static final String NAME = "trouble-at-end";

  private static final int LAST_LINES = 4;

  private final boolean on;
  private final double last;
  private final double done;

  TroubleAtEnd(Model model, Corrections corrections) {
    this.on = corrections.on(NAME);
    this.last = model.number("trouble-last");
    this.done = model.number("trouble-done");
  }

  /** What the odds that nothing stopped are multiplied by. */
  double factor(Matches matches, Trace trace, Telling telling) {
    if (!on) {
      return 1;
    }
    int tail = trace.stageAt().size() - LAST_LINES;
    boolean atLast = false;
    boolean leftUseless = false;
    for (Seen seen : matches.signs()) {
      if (seen.fault().general() || !telling.decisive(seen) || seen.hits().isEmpty()) {
        continue;
      }
      // A sign that asks for the end of the log only says that the log ends.
      boolean anywhere = !(seen.sign().form() instanceof SignForm.OnLine on) || on.atEnd() == 0;
      atLast |= anywhere && seen.last() >= tail;
      leftUseless |=
          seen.fault().stopsIn().contains(Stage.DONE)
              && !Stage.USERLAND.isAfter(trace.stageAt().get(seen.last()));
    }
    return (atLast ? last : 1) * (leftUseless ? done : 1);
  }
}
