package standstill.guide;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Stop;
import standstill.rank.Cause;
import standstill.rank.Ranking;
import standstill.rank.StopBelief;

/**
 * Which questions have to do with the stop: the looks that it names, and those of the causes that
 * together make up most of what it comes from. A cause far down the list would have its question
 * asked for being cheap, and the person would wonder what it has to do with their screen.
 */
final class ToThePoint {
  /** Probability from which a stop is taken for the one. */
  private static final double SURE_STOP = 0.5;

  /** Share of the causes of the stop whose questions are asked. */
  private static final double MOST = 0.9;

  /** A cause that is so likely is asked after whatever it ends in. */
  private static final double LIKELY = 0.1;

  private ToThePoint() {}

  /** Ids of checks; without a stop those of all causes. */
  static Set<String> checks(Ranking now) {
    Set<String> ids = new LinkedHashSet<>();
    Optional<Stop> stop =
        now.stop().filter(s -> s.probability() >= SURE_STOP).map(StopBelief::stop);
    if (stop.isEmpty()) {
      now.causes().forEach(cause -> ids.addAll(cause.fault().toldApartBy().keySet()));
      return ids;
    }
    ids.addAll(stop.get().looks());
    List<Cause> causes =
        now.causes().stream().filter(cause -> endsIn(cause.fault(), stop.get())).toList();
    double all = causes.stream().mapToDouble(Cause::probability).sum();
    double sum = 0;
    for (Cause cause : causes) {
      if (sum >= MOST * all) {
        break;
      }
      ids.addAll(cause.fault().toldApartBy().keySet());
      sum += cause.probability();
    }
    now.causes().stream()
        .filter(cause -> cause.probability() >= LIKELY)
        .forEach(cause -> ids.addAll(cause.fault().toldApartBy().keySet()));
    return ids;
  }

  private static boolean endsIn(Fault fault, Stop stop) {
    return fault.endsIn().isEmpty()
        ? fault.stopsIn().stream().anyMatch(stop.stages()::contains)
        : fault.endsIn().containsKey(stop.id());
  }
}
