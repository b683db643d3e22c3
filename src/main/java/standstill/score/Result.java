package standstill.score;

import java.util.List;
import java.util.Optional;
import standstill.base.Label;
import standstill.base.Stage;

/**
 * What the tool said of one labelled log.
 *
 * @param source name of its source
 * @param label what is known of it
 * @param verdict the tool's word
 * @param stage the stage that it found
 * @param stop id of the likeliest stop; empty when the text was not taken for a boot log
 * @param stopRight whether that is right; empty where nobody says
 * @param rank rank of the first right cause among the causes, from 1; 0 when none is among the
 *     first ten
 * @param top ids of the first three causes, most likely first
 * @param topProbability probability of the first hypothesis of all, unlisted and no-stall included
 * @param right whether that first hypothesis is right
 * @param probabilityOfRight probability of all right hypotheses together
 */
public record Result(
    String source,
    Label label,
    String verdict,
    Stage stage,
    String stop,
    Optional<Boolean> stopRight,
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
    return label.accepts(stage);
  }
}
