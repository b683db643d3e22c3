package standstill.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Signs of one story hang together: a disk that fails prints a general line and several exact ones.
 * Multiplying P(sign | rivals) as if they were independent makes any fault that shares such lines a
 * sure thing. So they are taken from the commonest to the rarest, and each is measured against how
 * rare it is once the one before it is there: P(sign | rivals) divided by P(the one before |
 * rivals) to the power {@code dependence}. At 1 the signs would be nested and only the rarest would
 * count; at 0 they would be independent.
 */
final class Dependence {
  static final String NAME = "dependence";

  /** A sign is never taken for more expected than that. */
  private static final double MOST_EXPECTED = 0.9;

  private final double power;

  Dependence(Model model, Corrections corrections) {
    this.power = corrections.on(NAME) ? model.number("dependence") : 0;
  }

  /** What each of these events is worth once the next commoner one is there. */
  Map<Clue, Double> values(List<Clue> heads) {
    Map<Clue, Double> values = new IdentityHashMap<>();
    List<Clue> commonestFirst = new ArrayList<>(heads);
    commonestFirst.sort(Comparator.comparingDouble(Clue::background).reversed());
    double before = 1;
    for (Clue head : commonestFirst) {
      double conditional =
          Math.min(
              Math.max(MOST_EXPECTED, head.background()),
              head.background() / Math.pow(before, power));
      values.put(head, head.ratioTo(conditional));
      before = head.background();
    }
    return values;
  }
}
