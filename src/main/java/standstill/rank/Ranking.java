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

  /** Probability of all causes together of which a sign was seen that tells something. */
  public double shown() {
    return causes.stream().filter(Cause::hasTellingProof).mapToDouble(Cause::probability).sum();
  }

  /**
   * What is likeliest: that nothing stalled, that a listed cause which shows itself did it, or a
   * cause that is not listed. Causes that show themselves count together: two that can't be told
   * apart halve each other's probability, and are no reason to say that the cause is unknown. A
   * cause without any proof never wins.
   */
  public Verdict verdict() {
    double listed = top().filter(Cause::hasProof).isPresent() ? shown() : 0;
    if (noStall >= listed && noStall >= unlisted) {
      return Verdict.NO_STALL;
    }
    return listed >= unlisted ? Verdict.STALLED : Verdict.UNLISTED;
  }
}
