package standstill.cli;

import java.util.function.BiConsumer;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Plan;
import standstill.base.Risk;

/** The steps of a repair in a terminal. */
final class PlanText {
  private PlanText() {}

  /** What stands beside a repair's title: minutes, risk, how long it holds. */
  static String tags(Fix fix) {
    String span = fix.scope().span().words();
    return fix.minutes()
        + " min, "
        + fix.risk().title()
        + (fix.scope().lasting() ? "" : ", for one boot")
        + (span.isEmpty() ? "" : ", " + span);
  }

  /**
   * Writes the steps.
   *
   * @param after what stands behind a step's number
   * @param out takes what stands before a text, and the text
   */
  static void write(Fix fix, Given given, String after, BiConsumer<String, String> out) {
    Plan plan = Plan.of(fix, given);
    for (Plan.Row row : plan.rows()) {
      if (!row.heading().isEmpty()) {
        out.accept("", row.heading() + ":");
      }
      if (row.risk().filter(Risk::isGrave).isPresent()) {
        out.accept("! ", "This step " + row.risk().get().title() + ".");
      }
      if (!row.caution().isEmpty()) {
        out.accept("! ", row.caution());
      }
      if (!row.saveFirst().isEmpty()) {
        out.accept("! ", "Save first: " + row.saveFirst());
      }
      out.accept(row.number() + after, row.line());
      if (!row.undo().isEmpty()) {
        out.accept(" ".repeat((row.number() + after).length()), "To undo this step: " + row.undo());
      }
    }
    if (!plan.others().isEmpty()) {
      out.accept("", "Steps for other systems than yours are left out.");
    }
  }
}
