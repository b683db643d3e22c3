package standstill.guide;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.base.Walk;
import standstill.rank.Ranking;

/** Which walks written by hand apply to a situation. */
public final class Offers {
  /** Likelihood from which a fault makes its walks worth offering. */
  private static final double LIKELY = 0.15;

  private static final int MOST = 3;

  private Offers() {}

  /**
   * Walks that apply, in the order of the base.
   *
   * @param symptoms that are seen, or may be
   * @param ranking empty when nothing was ranked yet
   */
  public static List<Walk> of(
      Base base, Optional<Stage> stage, Set<String> symptoms, Optional<Ranking> ranking) {
    return base.walks().stream()
        .filter(
            w ->
                stage.filter(w.stages()::contains).isPresent()
                    || w.symptoms().stream().anyMatch(symptoms::contains)
                    || ranking
                        .filter(
                            r ->
                                r.causes().stream()
                                    .filter(c -> c.probability() >= LIKELY)
                                    .anyMatch(c -> w.faults().contains(c.fault().id())))
                        .isPresent())
        .limit(MOST)
        .toList();
  }
}
