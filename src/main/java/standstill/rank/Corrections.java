package standstill.rank;

import java.util.List;
import java.util.Set;

/**
 * What the ranking corrects on top of Bayes' rule, by name. Each is a class of its own with its
 * number in the scale; {@code score --without NAME} switches one off to show what it earns.
 */
public final class Corrections {
  /** Names of all corrections. */
  public static final List<String> NAMES =
      List.of(
          SharedSigns.NAME,
          OneEvent.NAME,
          Dependence.NAME,
          PassedBy.NAME,
          FarFromEnd.NAME,
          StopUnseen.NAME,
          CameThrough.NAME,
          StageFit.NAME,
          Absence.NAME,
          Borrowed.NAME,
          LeftOver.NAME,
          StepsBack.NAME,
          Pull.NAME,
          Temper.NAME);

  /** All of them. */
  public static final Corrections ALL = new Corrections(Set.of());

  private final Set<String> off;

  private Corrections(Set<String> off) {
    this.off = Set.copyOf(off);
  }

  /**
   * All but those of the given names.
   *
   * @throws IllegalArgumentException when there is no such correction
   */
  public static Corrections without(Set<String> names) {
    for (String name : names) {
      if (!NAMES.contains(name)) {
        throw new IllegalArgumentException("no correction of that name: " + name);
      }
    }
    return new Corrections(names);
  }

  boolean on(String name) {
    return !off.contains(name);
  }
}
