package standstill.base;

import java.util.List;

/**
 * A repair.
 *
 * @param id unique in the base: the fault's id, {@code /fix/}, its number within the fault from 1
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
  public Fix {
    steps = List.copyOf(steps);
    needs = List.copyOf(needs);
    cautions = List.copyOf(cautions);
  }
}
