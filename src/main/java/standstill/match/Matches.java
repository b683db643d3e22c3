package standstill.match;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.machine.Machine;

/**
 * All that was recognised in a boot.
 *
 * @param signs signs that were seen, in the order of the base
 * @param trails false trails that were seen
 * @param complaints lines near the stop that speak of trouble
 * @param explained places of the lines on which a sign, a false trail or a milestone stands
 * @param untold ids of signs of which the paste shows too little to say whether they are there
 * @param machine what the lines say of the machine; empty where nothing was read from lines
 */
public record Matches(
    List<Seen> signs,
    List<SeenTrail> trails,
    List<Complaint> complaints,
    BitSet explained,
    Set<String> untold,
    Optional<Machine> machine) {
  /** Matches that were not read from lines. */
  public Matches(
      List<Seen> signs, List<SeenTrail> trails, List<Complaint> complaints, BitSet explained) {
    this(signs, trails, complaints, explained, Set.of(), Optional.empty());
  }

  public Matches {
    untold = Set.copyOf(untold);
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
