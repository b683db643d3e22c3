package standstill.machine;

import java.util.List;

/**
 * What the log says to a statement.
 *
 * @param verdict whether it holds
 * @param found of what it holds; empty when it doesn't
 */
public record Said(Verdict verdict, List<Found> found) {
  /** Whether a statement holds. */
  public enum Verdict {
    /** It holds. */
    SEEN,
    /** It doesn't hold, and the paste shows the part of the boot that would tell. */
    ABSENT,
    /** The paste doesn't show enough to tell. */
    NOT_COVERED
  }

  /** The paste doesn't tell. */
  static final Said NOT_COVERED = new Said(Verdict.NOT_COVERED, List.of());

  /** It doesn't hold. */
  static final Said ABSENT = new Said(Verdict.ABSENT, List.of());

  public Said {
    found = List.copyOf(found);
  }

  /** Holds of these, or not at all when there are none. */
  static Said of(List<Found> found) {
    return found.isEmpty() ? ABSENT : new Said(Verdict.SEEN, found);
  }

  /**
   * The same where something was found; a paste that is no whole boot can't say that there is
   * nothing.
   */
  static Said seenOnly(List<Found> found) {
    return found.isEmpty() ? NOT_COVERED : new Said(Verdict.SEEN, found);
  }

  /** Whether it holds. */
  public boolean holds() {
    return verdict == Verdict.SEEN;
  }
}
