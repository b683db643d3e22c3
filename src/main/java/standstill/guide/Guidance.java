package standstill.guide;

import java.util.List;
import standstill.rank.Ranking;

/**
 * Where a walk stands.
 *
 * @param ranking the causes after what was said
 * @param step what to do next
 * @param contradictions answers that the log, or the other answers, make very unlikely
 */
public record Guidance(Ranking ranking, Step step, List<Contradiction> contradictions) {
  public Guidance {
    contradictions = List.copyOf(contradictions);
  }

  /**
   * An answer that doesn't fit.
   *
   * @param check id of the check
   * @param answer id of the answer
   * @param chance how likely the answer was before it was given
   */
  public record Contradiction(String check, String answer, double chance) {}
}
