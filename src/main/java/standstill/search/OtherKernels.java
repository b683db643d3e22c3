package standstill.search;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.Trail;

/**
 * Entries of other kernels than the most common one. Words such as "disk" and "loader" stand in all
 * of them, so who doesn't name another kernel gets those of the most common one first.
 */
final class OtherKernels {
  /** What an entry of a kernel that the query does not name keeps of its score. */
  private static final double KEPT = 0.4;

  private final BitSet places = new BitSet();
  private final Set<String> names = new HashSet<>();

  OtherKernels(Base base, List<Entry> entries) {
    Optional<Family> most = base.family(base.mostCommonFamily());
    if (most.isEmpty()) {
      return;
    }
    Family common = most.get();
    for (Family family : base.families()) {
      if (!family.equals(common) && !common.include().contains(family.id())) {
        names.add(family.id());
        for (String word : family.title().toLowerCase(Locale.ROOT).split("[^a-z0-9]+")) {
          names.add(word);
        }
      }
    }
    names.remove("");
    Set<String> checks = new HashSet<>();
    for (Fault fault : base.faultsOf(common.id())) {
      checks.addAll(fault.toldApartBy().keySet());
    }
    for (int i = 0; i < entries.size(); i++) {
      places.set(i, isOther(base, common, checks, entries.get(i)));
    }
  }

  private static boolean isOther(Base base, Family common, Set<String> checks, Entry entry) {
    return switch (entry.kind()) {
      case FAULT ->
          base.fault(entry.id()).map(Fault::families).map(f -> !common.isAmong(f)).orElse(false);
      case TRAIL ->
          base.trail(entry.id()).map(Trail::families).map(f -> !common.isAmong(f)).orElse(false);
      case CHECK -> !checks.contains(entry.id());
      case SYMPTOM -> false;
    };
  }

  /** Lowers the scores of such entries, unless the query names one of their kernels. */
  void lower(double[] scores, String query) {
    for (String word : query.toLowerCase(Locale.ROOT).split("[^a-z0-9]+")) {
      if (names.contains(word)) {
        return;
      }
    }
    for (int i = places.nextSetBit(0); i >= 0; i = places.nextSetBit(i + 1)) {
      scores[i] *= KEPT;
    }
  }
}
