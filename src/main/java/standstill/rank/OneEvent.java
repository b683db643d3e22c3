package standstill.rank;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * One event counts once: signs with the same event, and signs that stand on the same lines, are one
 * with the most telling of them. Without it a disk that prints a general line and an exact one
 * would be twice as sure.
 */
final class OneEvent {
  static final String NAME = "one-event";

  private final boolean on;

  OneEvent(Corrections corrections) {
    this.on = corrections.on(NAME);
  }

  /**
   * Clues that are one event.
   *
   * @param head the most telling one
   * @param rest the others
   */
  record Group(Clue head, List<Clue> rest) {}

  /** The events behind clues, the most telling first; clues that tell nothing begin none. */
  List<Group> groups(List<Clue> clues) {
    List<Clue> sorted = new ArrayList<>(clues);
    sorted.sort(
        Comparator.comparingDouble(Clue::ratio)
            .reversed()
            .thenComparing(clue -> clue.seen().sign().id()));
    List<Group> groups = new ArrayList<>();
    Set<String> events = new HashSet<>();
    BitSet counted = new BitSet();
    for (Clue clue : sorted) {
      boolean again =
          on
              && (!events.add(clue.seen().sign().event())
                  || (!clue.lines().isEmpty() && clue.lines().intersects(counted)));
      counted.or(clue.lines());
      if (again || clue.ratio() <= 1.0001) {
        groups.stream()
            .filter(g -> g.head().lines().intersects(clue.lines()) || g.head().sameEvent(clue))
            .findFirst()
            .ifPresent(g -> g.rest().add(clue));
      } else {
        groups.add(new Group(clue, new ArrayList<>()));
      }
    }
    return groups;
  }
}
