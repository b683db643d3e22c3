package standstill.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import standstill.base.Stage;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/** Units that hold a boot, or fail. */
final class Units {
  /** Failures of one unit in one boot that are no chance. */
  private static final int AGAIN = 3;

  private Units() {}

  static Said neverFinished(Machine machine) {
    // Before the installed system runs, units wait for the root, which other statements tell of.
    if (machine.things(ThingSort.UNIT).isEmpty() || !machine.trace().stage().isAfter(Stage.ROOT)) {
      return Said.NOT_COVERED;
    }
    return Said.of(
        machine.waiting().holders(machine.trace()).stream()
            .map(
                unit ->
                    new Found(
                        Map.of("unit", unit.label(), "waited", unit.value("waited")),
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
            new Found(Map.of("unit", unit.label(), "times", String.valueOf(lines.size())), lines));
      }
    }
    return Said.seenOnly(found);
  }

  static Said deviceNeverCame(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing unit : machine.things(ThingSort.UNIT)) {
      List<Mention> lines =
          unit.mentions().stream().filter(m -> "timeout".equals(m.values().get("why"))).toList();
      if (!lines.isEmpty() && unit.state() == ThingState.FAILED) {
        found.add(new Found(Map.of("device", unit.name()), lines));
      }
    }
    return Said.seenOnly(found);
  }
}
