package standstill.base;

import java.util.List;

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
 */
public record Fix(
    String id,
    String title,
    List<String> steps,
    int minutes,
    Chance cures,
    Risk risk,
    List<String> needs,
    String prove,
    String undo,
    List<String> cautions) {
  /** What stands between a fault's id and the fix's own. */
  static final String BETWEEN = "/fix/";

  public Fix {
    steps = List.copyOf(steps);
    needs = List.copyOf(needs);
    cautions = List.copyOf(cautions);
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
