package standstill.report;

import java.util.List;
import standstill.base.Stage;
import standstill.base.Statement;
import standstill.log.Boot;

/**
 * Which boot of a text is the one to diagnose: the last one that stopped. After a reset without a
 * shutdown the firmware and the loader print once more, and what they print says nothing of why.
 */
final class BootChoice {
  /** So many boots at the end of a text are looked at: a machine that restarts does so often. */
  private static final int MOST = 12;

  private BootChoice() {}

  /** Reads one boot. */
  interface Reader {
    Sighting read(Boot boot);
  }

  /** The boot of that number, or the last one that stopped for 0. */
  static Sighting choose(List<Boot> boots, int number, Reader reader) {
    if (number > 0) {
      return reader.read(boots.get(number - 1)).because("it was asked for");
    }
    Sighting last = reader.read(boots.get(boots.size() - 1));
    if (boots.size() == 1) {
      return last;
    }
    if (last.trace().stage().isAfter(Stage.LOADER)) {
      return last.because("it is the last one");
    }
    for (int b = boots.size() - 2; b >= 0 && b >= boots.size() - MOST; b--) {
      Sighting before = reader.read(boots.get(b));
      if (before.trace().stage().isAfter(Stage.LOADER)) {
        return startedAgain(before)
            ? before.because(
                "it stopped and the machine started again by itself; what follows it got no further than"
                    + " the boot loader")
            : last.because("it is the last one, and the one before it was ended in order");
      }
    }
    return last.because("it is the last one; none got further than the boot loader");
  }

  private static boolean startedAgain(Sighting sighting) {
    return sighting
        .matches()
        .machine()
        .map(m -> m.says(Statement.STARTED_AGAIN_BY_ITSELF).holds())
        .orElse(false);
  }
}
