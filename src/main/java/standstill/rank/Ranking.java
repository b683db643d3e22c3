package standstill.rank;

import java.util.List;
import java.util.Optional;

/**
 * All hypotheses with their probabilities, which sum to 1.
 *
 * @param causes every fault of the family, most probable first
 * @param unlisted probability that the cause is not in the base
 * @param noStall probability that nothing stalled
 */
public record Ranking(List<Cause> causes, double unlisted, double noStall) {
  public Ranking {
    causes = List.copyOf(causes);
    double sum = unlisted + noStall;
    for (Cause cause : causes) {
      sum += cause.probability();
    }
    if (Math.abs(sum - 1) > 1e-6) {
      throw new IllegalArgumentException("probabilities sum to " + sum);
    }
  }

  /** The likeliest cause, if the base has any. */
  public Optional<Cause> top() {
    return causes.stream().findFirst();
  }

  /**
   * The likeliest of all hypotheses. A cause without any proof never wins: when nothing tells, the
   * honest answer is that the tool doesn't know.
   */
  public Verdict verdict() {
    double cause = top().filter(Cause::hasProof).map(Cause::probability).orElse(0.0);
    if (noStall >= cause && noStall >= unlisted) {
      return Verdict.NO_STALL;
    }
    return cause >= unlisted ? Verdict.STALLED : Verdict.UNLISTED;
  }
}
