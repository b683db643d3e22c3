package standstill.score;

import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Label;
import standstill.base.Rate;
import standstill.base.Sign;
import standstill.base.Stop;
import standstill.match.Seen;
import standstill.rank.Ranker;

/**
 * Counts in how many labelled boots of other causes each sign was seen, and in how many of those
 * that ended in the same stop. Signs that were seen in none, where nothing was ruled out either,
 * keep the chance of their word.
 */
final class BackgroundRates {
  /** A fault is a rival where it ends in the stop at least that often. */
  private static final double RIVAL = 0.1;

  private final Base base;
  private final Ranker ranker;

  BackgroundRates(Base base, Ranker ranker) {
    this.base = base;
    this.ranker = ranker;
  }

  private static final class Count {
    int seen;
    int boots;
    int rivalsSeen;
    int rivals;
  }

  /** The rates by sign id. */
  Map<String, Rate> of(Collection<Case> cases) {
    Map<String, Count> counts = new LinkedHashMap<>();
    for (Case each : cases) {
      if (each.seen().isPresent()) {
        count(each, counts);
      }
    }
    Map<String, Rate> rates = new LinkedHashMap<>();
    counts.forEach(
        (id, count) -> {
          if (count.seen > 0) {
            rates.put(id, new Rate(count.seen, count.boots, count.rivalsSeen, count.rivals));
          }
        });
    return rates;
  }

  private void count(Case each, Map<String, Count> counts) {
    Set<String> seen = new HashSet<>();
    for (Seen sign : each.seen().orElseThrow().matches().signs()) {
      seen.add(sign.sign().id());
    }
    Set<String> own = own(each.label());
    for (Fault fault : base.faultsOf(each.family())) {
      if (!own.contains(fault.id())) {
        boolean rival =
            each.stops().stream()
                .flatMap(id -> base.stop(id).stream())
                .anyMatch(stop -> ranker.chance(fault, stop) >= RIVAL);
        for (Sign sign : fault.signs()) {
          add(counts, sign, seen.contains(sign.id()), rival);
        }
      }
    }
    for (Stop stop : base.stopsOf(each.family())) {
      if (!each.stops().isEmpty() && !each.stops().contains(stop.id())) {
        for (Sign sign : stop.signs()) {
          add(counts, sign, seen.contains(sign.id()), false);
        }
        for (String id : stop.general()) {
          base.fault(id)
              .ifPresent(f -> f.signs().forEach(s -> add(counts, s, seen.contains(s.id()), false)));
        }
      }
    }
  }

  private static void add(Map<String, Count> counts, Sign sign, boolean seen, boolean rival) {
    Count count = counts.computeIfAbsent(sign.id(), id -> new Count());
    count.boots++;
    count.seen += seen ? 1 : 0;
    count.rivals += rival ? 1 : 0;
    count.rivalsSeen += seen && rival ? 1 : 0;
  }

  /**
   * Faults whose signs are no surprise in a boot: the labelled ones, what they lead to, what leads
   * to them, the coarse causes of their part, and the general faults of stops, which are counted
   * with their stop.
   */
  private Set<String> own(Label label) {
    Set<String> own = new HashSet<>(label.also());
    own.add(label.label());
    own.addAll(label.isUnlisted() ? label.general() : Set.of());
    Set<String> right = Set.copyOf(own);
    Set<String> parts = new HashSet<>();
    for (String id : right) {
      base.fault(id)
          .ifPresent(
              fault -> {
                parts.add(fault.part());
                own.addAll(base.outcomes(fault));
              });
    }
    for (Fault fault : base.faults()) {
      boolean coarse = fault.general() && parts.contains(fault.part());
      if (coarse || !Collections.disjoint(fault.leadsTo(), right)) {
        own.add(fault.id());
      }
    }
    base.stops().forEach(stop -> own.addAll(stop.general()));
    return own;
  }
}
