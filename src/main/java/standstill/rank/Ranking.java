package standstill.rank;

import java.util.List;
import java.util.Optional;

/**
 * All hypotheses with their probabilities, which sum to 1.
 *
 * @param causes every fault of the family, most probable first; those that stand for a cause that
 *     is not listed ({@link Cause#isAnother}) are among them
 * @param unlisted probability that the cause is not in the base, beyond what those stand for
 * @param noStall probability that nothing stalled
 * @param stops what the boot may have ended in, most probable first; empty without a log
 */
public record Ranking(List<Cause> causes, double unlisted, double noStall, List<StopBelief> stops) {
  public Ranking {
    causes = List.copyOf(causes);
    stops = List.copyOf(stops);
    double sum = unlisted + noStall;
    for (Cause cause : causes) {
      sum += cause.probability();
    }
    if (Math.abs(sum - 1) > 1e-6) {
      throw new IllegalArgumentException("probabilities sum to " + sum);
    }
  }

  /** The likeliest listed cause, if the base has any. */
  public Optional<Cause> top() {
    return listed().stream().findFirst();
  }

  /** Causes that the base lists, most probable first. */
  public List<Cause> listed() {
    return causes.stream().filter(cause -> !cause.isAnother()).toList();
  }

  /** Probability that the cause is not in the base. */
  public double notListed() {
    return unlisted
        + causes.stream().filter(Cause::isAnother).mapToDouble(Cause::probability).sum();
  }

  /** What the boot most likely ended in; empty without a log. */
  public Optional<StopBelief> stop() {
    return stops.stream().findFirst();
  }

  /** Probability of all causes together of which a sign was seen that tells something. */
  public double shown() {
    return listed().stream().filter(Cause::hasTellingProof).mapToDouble(Cause::probability).sum();
  }

  /**
   * What is likeliest: that nothing stalled, that a listed cause which shows itself did it, or a
   * cause that is not listed. Causes that show themselves count together: two that can't be told
   * apart halve each other's probability, and are no reason to say that the cause is unknown. A
   * cause without any proof never wins.
   */
  public Verdict verdict() {
    double listed = top().filter(Cause::hasProof).isPresent() ? shown() : 0;
    if (noStall >= listed && noStall >= notListed()) {
      return Verdict.NO_STALL;
    }
    return listed >= notListed() ? Verdict.STALLED : Verdict.UNLISTED;
  }
}
