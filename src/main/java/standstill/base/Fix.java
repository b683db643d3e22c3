package standstill.base;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A repair.
 *
 * @param id unique in the base, for ever: the fault's id, {@code /fix/}, the fix's own id
 * @param title what is done
 * @param steps in order
 * @param minutes how long it takes a hobby builder
 * @param cures P(it repairs the fault | the fault)
 * @param risk what it puts at risk
 * @param needs things that the person must have
 * @param prove what the next boot shows when it worked
 * @param undo how to take it back
 * @param cautions to be read before the steps
 * @param scope where it applies, how long it holds, what comes before it
 */
public record Fix(
    String id,
    String title,
    List<FixStep> steps,
    int minutes,
    Chance cures,
    Risk risk,
    List<String> needs,
    String prove,
    String undo,
    List<String> cautions,
    Scope scope) {
  /** What stands between a fault's id and the fix's own. */
  static final String BETWEEN = "/fix/";

  public Fix {
    steps = List.copyOf(steps);
    needs = List.copyOf(needs);
    cautions = List.copyOf(cautions);
  }

  /**
   * Where a fix applies, how long it holds, and what comes before it.
   *
   * @param lasting whether it holds beyond the next boot
   * @param first id of the fix of the same fault that has to be done before it
   * @param when what has to be so for it to make sense
   * @param span versions for which it holds
   * @param values names in its steps to what stands there while a log doesn't tell
   */
  public record Scope(
      boolean lasting,
      Optional<String> first,
      List<Condition> when,
      Span span,
      Map<String, String> values) {
    /** Anywhere, for good, in no order. */
    public static final Scope ANYWHERE =
        new Scope(true, Optional.empty(), List.of(), Span.ALWAYS, Map.of());

    public Scope {
      when = List.copyOf(when);
      values = Map.copyOf(values);
    }
  }

  /** Whether it can do harm that is hard to take back. */
  public boolean isGrave() {
    return risk.isGrave();
  }

  /** The steps as plain texts, for all systems. */
  public List<String> texts() {
    return Plan.of(this, Given.NOTHING).texts();
  }

  /** The whole id of a fix. */
  public static String id(String fault, String own) {
    return fault + BETWEEN + own;
  }

  /** A fix's own id, without its fault's. */
  public String own() {
    return own(id);
  }

  /** A fix's own id out of a whole one. */
  static String own(String id) {
    return id.substring(id.indexOf(BETWEEN) + BETWEEN.length());
  }
}
