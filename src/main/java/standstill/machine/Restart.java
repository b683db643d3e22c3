package standstill.machine;

import java.util.List;
import java.util.Map;
import standstill.base.Stage;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.log.LogLine;

/** Whether the machine started again, and nobody had asked for it. */
final class Restart {
  private Restart() {}

  static Said byItself(Machine machine) {
    if (!machine.boot().followed()) {
      return Said.ABSENT;
    }
    boolean asked = !machine.wishes(WishKind.RESTART).isEmpty();
    if (asked || machine.trace().stage() == Stage.DONE || machine.boot().lines().isEmpty()) {
      return Said.ABSENT;
    }
    int last = machine.boot().lines().size() - 1;
    LogLine line = machine.boot().lines().get(last);
    return Said.of(
        List.of(
            new Found(
                Map.of(),
                List.of(
                    new Mention(
                        last,
                        line.number(),
                        line.text(),
                        "last line",
                        ThingState.SEEN,
                        Map.of())))));
  }
}
