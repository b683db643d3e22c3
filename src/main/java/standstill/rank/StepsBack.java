package standstill.rank;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Fault;

/**
 * A coarse cause stands for the finer ones that are not listed, so it steps back by {@code
 * stepping-back} when a finer one that would produce it shows a decisive sign and may stop boots
 * here.
 */
final class StepsBack {
  static final String NAME = "steps-back";

  private final double factor;

  StepsBack(Model model, Corrections corrections) {
    this.factor = corrections.on(NAME) ? model.number("stepping-back") : 1;
  }

  double factor() {
    return factor;
  }

  /** Ids of the coarse causes that step back behind these. */
  static Set<String> behind(List<Fault> decisive, Consequences consequences) {
    Set<String> coarse = new HashSet<>();
    for (Fault fault : decisive) {
      consequences.of(fault).keySet().stream()
          .filter(Fault::general)
          .map(Fault::id)
          .forEach(coarse::add);
    }
    return coarse;
  }
}
