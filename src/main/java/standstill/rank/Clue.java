package standstill.rank;

import java.util.BitSet;
import standstill.match.Hit;
import standstill.match.Seen;

/**
 * A sign that was seen, and what it is worth to the hypothesis that is being weighed.
 *
 * @param seen the sign with its lines
 * @param chance P(sign | the hypothesis)
 * @param background P(sign | a rival)
 * @param exponent how far it counts: 1 in full, less where the boot went on after it
 * @param lines places of its lines in the boot
 */
record Clue(Seen seen, double chance, double background, double exponent, BitSet lines) {
  /** What the odds of the hypothesis are multiplied by. */
  double ratio() {
    return ratioTo(background);
  }

  double ratioTo(double back) {
    return Math.pow(Math.max(chance, back) / back, exponent);
  }

  /** Whether both are signs of one event. */
  boolean sameEvent(Clue other) {
    return seen.sign().event().equals(other.seen().sign().event());
  }

  /** Places of the lines of a sign in the boot. */
  static BitSet linesOf(Seen seen) {
    BitSet lines = new BitSet();
    for (Hit hit : seen.hits()) {
      lines.set(hit.index());
    }
    return lines;
  }
}
