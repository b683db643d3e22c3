package standstill.match;

import java.util.BitSet;
import java.util.List;

/**
 * All that was recognised in a boot.
 *
 * @param signs signs that were seen, in the order of the base
 * @param trails false trails that were seen
 * @param complaints lines near the stop that speak of trouble
 * @param explained places of the lines on which a sign, a false trail or a milestone stands
 */
public record Matches(
    List<Seen> signs, List<SeenTrail> trails, List<Complaint> complaints, BitSet explained) {
  public Matches {
    signs = List.copyOf(signs);
    trails = List.copyOf(trails);
    complaints = List.copyOf(complaints);
    explained = (BitSet) explained.clone();
  }

  @Override
  public BitSet explained() {
    return (BitSet) explained.clone();
  }
}
