package standstill.rank;

import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import standstill.match.Complaint;

/**
 * Trouble near the stop that a fault doesn't account for: each kind of line makes it likelier that
 * something else stopped the boot, by {@code left-over}, two kinds at most, since real logs are
 * full of complaints. Causes that stand for what isn't listed don't pay.
 */
final class LeftOver {
  static final String NAME = "left-over";

  private static final int MOST = 2;

  private final double each;

  LeftOver(Model model, Corrections corrections) {
    this.each = corrections.on(NAME) ? model.number("left-over") : 1;
  }

  /**
   * The factor.
   *
   * @param known lines that the fault or the stop accounts for
   */
  Factor factor(List<Complaint> complaints, BitSet known) {
    Set<String> shapes = new LinkedHashSet<>();
    Set<String> explained = new HashSet<>();
    for (Complaint complaint : complaints) {
      shapes.add(complaint.shape());
      if (known.get(complaint.index())) {
        explained.add(complaint.shape());
      }
    }
    shapes.removeAll(explained);
    return new Factor(
        Factor.Kind.LEFT_OVER,
        Math.pow(each, Math.min(MOST, shapes.size())),
        "trouble near the stop that it doesn't account for: "
            + String.join("; ", shapes.stream().limit(MOST).toList()),
        List.of());
  }
}
