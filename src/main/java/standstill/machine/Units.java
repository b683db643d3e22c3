package standstill.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/** Units that hold a boot, or fail. */
final class Units {
  /** Failures of one unit in one boot that are no chance. */
  private static final int AGAIN = 3;

  private Units() {}

  static Said neverFinished(Machine machine) {
    if (machine.things(ThingSort.UNIT).isEmpty()) {
      return Said.NOT_COVERED;
    }
    return Said.of(
        machine.waiting().holders(machine.trace()).stream()
            .map(
                unit ->
                    new Found(
                        Map.of("unit", shown(unit), "waited", unit.value("waited")),
                        List.of(unit.last())))
            .toList());
  }

  static Said failsAgainAndAgain(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing unit : machine.things(ThingSort.UNIT)) {
      List<Mention> lines =
          unit.mentions().stream()
              .filter(m -> m.state() == ThingState.FAILED && !Waiting.isBehind(m))
              .toList();
      if (lines.size() >= AGAIN && unit.state() == ThingState.FAILED) {
        found.add(
            new Found(
                Map.of("unit", shown(unit), "times", String.valueOf(lines.size())), lines));
      }
    }
    return Said.seenOnly(found);
  }

  static Said deviceNeverCame(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing unit : machine.things(ThingSort.UNIT)) {
      List<Mention> lines =
          unit.mentions().stream()
              .filter(m -> "timeout".equals(m.values().get("why")))
              .toList();
      if (!lines.isEmpty() && unit.state() == ThingState.FAILED) {
        found.add(new Found(Map.of("device", unit.name()), lines));
      }
    }
    return Said.seenOnly(found);
  }

  /** A unit's name with what it does, where both are known. */
  static String shown(Thing unit) {
    return unit.title().isEmpty() || unit.title().equals(unit.name())
        ? unit.name()
        : unit.name() + " (" + unit.title() + ")";
  }
}
