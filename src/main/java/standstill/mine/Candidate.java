package standstill.mine;

import java.util.List;
import standstill.base.Stage;

/**
 * A template of lines that no sign explains: a candidate for a new sign.
 *
 * @param template the words of its messages, {@code <*>} for what varies
 * @param times on how many lines it stands
 * @param logs in how many logs
 * @param stage the stage in which most of its lines stand
 * @param grave in how many logs a line of it speaks of failure
 * @param late in how many logs a line of it stands near the end
 * @param after how many lines of the boot follow the last one of it, at the least
 * @param healthy in how many healthy boots its pattern matches a line
 * @param weight what it is ranked by; see {@link Miner}
 * @param proposal a pattern for the sign
 * @param examples lines of it with different texts, the first ones
 * @param kept how many different texts the pattern was made of and tested on
 */
public record Candidate(
    String template,
    int times,
    int logs,
    Stage stage,
    int grave,
    int late,
    int after,
    int healthy,
    int weight,
    Generalised proposal,
    List<Stray> examples,
    int kept) {
  public Candidate {
    examples = List.copyOf(examples);
  }

  Candidate withHealthy(int boots) {
    return new Candidate(
        template, times, logs, stage, grave, late, after, boots, weight, proposal, examples, kept);
  }

  /** Whether healthy boots print it too, so that it tells nothing by itself. */
  public boolean isHealthy() {
    return healthy > 0;
  }
}
