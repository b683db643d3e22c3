package standstill.web;

import java.util.List;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Plan;
import standstill.base.Risk;

/**
 * The steps of a repair, ready for their template.
 *
 * @param rows the steps for the reader's system, as far as it is known
 * @param others steps for other systems
 */
public record PlanView(List<RowView> rows, List<RowView> others) {

  /** A step; what does not apply is empty. */
  public record RowView(
      int number,
      String heading,
      String label,
      boolean told,
      String text,
      String risk,
      String caution,
      String undo,
      String saveFirst) {}

  static PlanView of(Fix fix, Given given) {
    Plan plan = Plan.of(fix, given);
    return new PlanView(
        plan.rows().stream().map(PlanView::row).toList(),
        plan.others().stream().map(PlanView::row).toList());
  }

  private static RowView row(Plan.Row row) {
    return new RowView(
        row.number(),
        row.heading(),
        row.label(),
        row.told(),
        row.text(),
        row.risk().map(Risk::title).orElse(""),
        row.caution(),
        row.undo(),
        row.saveFirst());
  }
}
