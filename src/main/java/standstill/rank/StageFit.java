package standstill.rank;

import java.util.Set;
import standstill.base.Stage;
import standstill.trace.Trace;

/**
 * How well a hypothesis fits the stage where progress ended: a factor {@code stage-miss} for each
 * stage between, never below a floor.
 */
final class StageFit {
  static final String NAME = "stage-fit";

  private final double miss;
  private final double least;

  StageFit(Model model, Corrections corrections) {
    this.miss = corrections.on(NAME) ? model.number("stage-miss") : 1;
    this.least = model.number("least-stage-fit");
  }

  /** The factor for somebody who stops boots in these stages. */
  double of(Set<Stage> stages, Trace trace) {
    Stage stop = trace.stage();
    if (!trace.known() || stages.contains(stop)) {
      return 1;
    }
    int distance =
        stages.stream()
            .mapToInt(stage -> Math.abs(stage.ordinal() - stop.ordinal()))
            .min()
            .orElse(1);
    return Math.max(least, Math.pow(miss, distance));
  }
}
