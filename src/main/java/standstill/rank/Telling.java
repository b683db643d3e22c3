package standstill.rank;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.match.Hit;
import standstill.match.Seen;

/** How much a sign tells: how often it is seen with its fault, and how often without. */
final class Telling {
  /** A sign is decisive when fewer than one in a hundred boots of other causes show it. */
  private static final double DECISIVE = 0.01;

  /** How many times as likely with its fault as without a sign must be, to tell something. */
  private static final double TELLING = 5;

  private final Map<String, Double> backgrounds = new HashMap<>();

  Telling(Base base, Model model) {
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        backgrounds.put(sign.id(), model.background(base, sign));
      }
    }
  }

  /** P(sign | another cause, or none). */
  double background(Sign sign) {
    return backgrounds.getOrDefault(sign.id(), 0.01);
  }

  /** P(sign | its fault) / P(sign | another cause). */
  double ratio(Sign sign) {
    return sign.shows().value() / background(sign);
  }

  /** Whether it is a line, and nearly none of the other causes show it. */
  boolean decisive(Seen seen) {
    return !seen.hits().isEmpty() && background(seen.sign()) < DECISIVE;
  }

  /** Whether it is a line that says something about its fault. */
  boolean tells(Seen seen) {
    return !seen.hits().isEmpty() && ratio(seen.sign()) >= TELLING;
  }

  /** Places of its lines in the boot. */
  static BitSet lines(Seen seen) {
    BitSet lines = new BitSet();
    for (Hit hit : seen.hits()) {
      lines.set(hit.index());
    }
    return lines;
  }
}
