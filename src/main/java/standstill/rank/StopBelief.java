package standstill.rank;

import java.util.List;
import standstill.base.Stop;

/**
 * A stop with its probability.
 *
 * @param stop what the boot may have ended in
 * @param probability between 0 and 1
 * @param factors where it comes from
 */
public record StopBelief(Stop stop, double probability, List<Factor> factors) {
  public StopBelief {
    factors = List.copyOf(factors);
  }
}
