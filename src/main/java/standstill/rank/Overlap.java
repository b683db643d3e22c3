package standstill.rank;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * For each sign, the other faults one of whose proving texts it matches, with the chance that they
 * show it: that of their sign, times the share of its texts that match. It depends on the base's
 * signs alone, so that rankers with other numbers share it.
 */
public final class Overlap {
  private final Map<String, Map<Fault, Double>> shown = new HashMap<>();

  /** A sign with what it stands for. */
  private record Owned(Fault fault, Sign sign, Pattern pattern) {}

  /** The overlap of all signs on lines. */
  public Overlap(Base base) {
    List<Owned> owned = new ArrayList<>();
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine form) {
          owned.add(new Owned(fault, sign, form.line()));
        }
      }
    }
    PatternSet patterns = new PatternSet(owned.stream().map(Owned::pattern).toList());
    for (Owned other : owned) {
      Map<Integer, Integer> matched = new HashMap<>();
      for (String text : other.sign().seen()) {
        patterns.candidates(
            text,
            false,
            (pattern, place) -> {
              if (pattern.foundIn(text)) {
                matched.merge(place, 1, Integer::sum);
              }
            });
      }
      matched.forEach((place, times) -> note(owned.get(place), other, times));
    }
  }

  private void note(Owned each, Owned other, int times) {
    if (!each.fault().equals(other.fault())) {
      double chance = other.sign().shows().value() * times / other.sign().seen().size();
      shown
          .computeIfAbsent(each.sign().id(), k -> new HashMap<>())
          .merge(other.fault(), chance, Math::max);
    }
  }

  /** The faults that show a sign of another one. */
  Map<Fault, Double> shownBy(Sign sign) {
    return shown.getOrDefault(sign.id(), Map.of());
  }
}
