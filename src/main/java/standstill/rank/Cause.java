package standstill.rank;

import java.util.List;
import standstill.base.Fault;

/**
 * A fault with its probability.
 *
 * @param fault the cause
 * @param probability between 0 and 1
 * @param factors where it comes from
 */
public record Cause(Fault fault, double probability, List<Factor> factors) {
  public Cause {
    factors = List.copyOf(factors);
  }

  /** Whether it stands for a cause of a stop that the base does not list. */
  public boolean isAnother() {
    return factors.stream().anyMatch(f -> f.kind() == Factor.Kind.ANOTHER);
  }

  /** Whether a sign of its own or of a consequence was seen. */
  public boolean hasProof() {
    return factors.stream().anyMatch(f -> f.kind() == Factor.Kind.SEEN && f.value() > 1);
  }

  /** Whether a sign of its own was seen that is worth something: its odds grew by half or more. */
  public boolean hasTellingProof() {
    return factors.stream()
        .anyMatch(
            f ->
                f.kind() == Factor.Kind.SEEN
                    && f.value() >= 1.5
                    && f.signs().stream().anyMatch(s -> s.fault().id().equals(fault.id())));
  }
}
