package standstill.base;

import java.util.List;
import java.util.Optional;

/** A step of a repair: something to do, or several steps that belong together. */
public sealed interface FixStep {
  /** For whom it is and what to beware of. */
  Terms terms();

  /**
   * Something to do.
   *
   * @param text one sentence or command, with {@code {name}} places for what a log tells
   */
  record Doing(String text, Terms terms) implements FixStep {}

  /**
   * Steps that belong together: a variant for some systems, or a block that is written once.
   *
   * @param title the block's; empty for a variant
   * @param block id of the block that the steps come from; empty for a variant
   */
  record Group(String title, String block, List<FixStep> steps, Terms terms) implements FixStep {
    public Group {
      steps = List.copyOf(steps);
    }
  }

  /** A step for everybody that needs no care of its own. */
  static FixStep of(String text) {
    return new Doing(text, Terms.NONE);
  }

  /**
   * For whom a step is and what to beware of.
   *
   * @param on the cases that it is for; for everybody when empty. Of several cases of one
   *     circumstance one has to be there, of several circumstances each
   * @param risk what it puts at risk, where it differs from the rest
   * @param caution to be read before the step, or empty
   * @param undo how to take it back, or empty
   * @param saveFirst what to save before, and how, or empty
   */
  record Terms(
      List<Circumstance.Case> on,
      Optional<Risk> risk,
      String caution,
      String undo,
      String saveFirst) {
    /** For everybody, without care. */
    public static final Terms NONE = new Terms(List.of(), Optional.empty(), "", "", "");

    public Terms {
      on = List.copyOf(on);
    }
  }
}
