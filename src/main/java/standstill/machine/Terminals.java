package standstill.machine;

import java.util.List;
import java.util.Map;
import standstill.base.Stage;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;

/**
 * Where messages go. A kernel told to use another terminal shows it in the text of the first one:
 * that ends where the other one is turned on, or where the loader hands over.
 */
final class Terminals {
  /** Lines that may still come after the words on the other terminal. */
  private static final int LAST_LINES = 6;

  private Terminals() {}

  static Said elsewhere(Machine machine) {
    List<Wish> consoles = machine.wishes(WishKind.CONSOLE);
    if (consoles.isEmpty()) {
      return Said.NOT_COVERED;
    }
    Wish last = consoles.get(0);
    for (Wish each : consoles) {
      last =
          each.mentions().get(each.mentions().size() - 1).index() >= last.mentions().get(0).index()
              ? each
              : last;
    }
    String asked = bare(last.name());
    if (machine.trace().stage().isAfter(Stage.ROOT)) {
      return Said.ABSENT;
    }
    int end = machine.boot().lines().size() - LAST_LINES;
    for (Thing terminal : machine.things(ThingSort.TERMINAL)) {
      boolean turnedOff = terminal.state() == ThingState.GONE && terminal.last().index() >= end;
      if (turnedOff) {
        return Said.of(List.of(found(asked, terminal.name(), List.of(terminal.last()))));
      }
      boolean otherTurnedOn =
          bare(terminal.name()).equals(asked)
              && terminal.ever(ThingState.READY)
              && terminal.last().index() >= end;
      if (otherTurnedOn) {
        return Said.of(List.of(found(asked, "", List.of(terminal.last()))));
      }
    }
    boolean loaderOnly =
        machine.trace().stage() == Stage.LOADER
            && last.mentions().get(0).index() >= end - LAST_LINES;
    return loaderOnly
        ? Said.of(List.of(found(asked, "", List.of(last.mentions().get(0)))))
        : Said.ABSENT;
  }

  private static Found found(String asked, String here, List<Mention> lines) {
    return new Found(Map.of("console", asked, "here", here), lines);
  }

  /** The terminal without its speed. */
  private static String bare(String name) {
    int comma = name.indexOf(',');
    return comma < 0 ? name : name.substring(0, comma);
  }
}
