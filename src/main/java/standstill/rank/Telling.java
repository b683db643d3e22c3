package standstill.rank;

import java.util.HashMap;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stop;
import standstill.match.Seen;

/** How much a sign tells: how often it is seen with its fault, and how often without. */
final class Telling {
  private final Map<String, Double> backgrounds = new HashMap<>();
  private final double decisive;
  private final double telling;

  Telling(Base base, Model model, SharedSigns shared) {
    this.decisive = model.number("decisive");
    this.telling = model.number("telling");
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        backgrounds.put(sign.id(), Math.max(model.background(base, sign), shared.chance(sign)));
      }
    }
    for (Stop stop : base.stops()) {
      for (Sign sign : stop.signs()) {
        backgrounds.put(sign.id(), model.background(base, sign));
      }
    }
  }

  /** P(sign | a rival). */
  double background(Sign sign) {
    return backgrounds.getOrDefault(sign.id(), sign.elsewhere().value());
  }

  /** P(sign | its fault) / P(sign | a rival). */
  double ratio(Sign sign) {
    return sign.shows().value() / background(sign);
  }

  /** Whether it was read in the log and nearly no rival shows it. */
  boolean decisive(Seen seen) {
    return present(seen) && background(seen.sign()) < decisive;
  }

  /** Whether it was read in the log and says something about its fault. */
  boolean tells(Seen seen) {
    return present(seen) && ratio(seen.sign()) >= telling;
  }

  private static boolean present(Seen seen) {
    return !(seen.sign().form() instanceof SignForm.Without);
  }
}
