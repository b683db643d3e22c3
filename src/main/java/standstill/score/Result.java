package standstill.score;

import java.util.List;
import standstill.base.Label;
import standstill.base.Stage;

/**
 * What the tool said of one labelled log.
 *
 * @param label what is known of it
 * @param verdict the tool's word
 * @param stage the stage that it found
 * @param rank rank of the first right cause among the causes, from 1; 0 when none is among the
 *     first ten
 * @param top ids of the first three causes, most likely first
 * @param topProbability probability of the first hypothesis of all, unlisted and no-stall included
 * @param right whether that first hypothesis is right
 * @param probabilityOfRight probability of all right hypotheses together
 */
public record Result(
    Label label,
    String verdict,
    Stage stage,
    int rank,
    List<String> top,
    double topProbability,
    boolean right,
    double probabilityOfRight) {
  public Result {
    top = List.copyOf(top);
  }

  /** Whether the stage is the labelled one. */
  public boolean stageRight() {
    return stage == label.stage();
  }
}
