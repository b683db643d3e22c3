package standstill.audit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import standstill.base.Base;
import standstill.base.Reviewed;
import standstill.text.Position;
import standstill.text.Problem;

/** Every entry was read by somebody within a year. */
final class Reviews implements Rule {
  @Override
  public String id() {
    return "not-reviewed";
  }

  @Override
  public String title() {
    return "Every entry has been reviewed within a year";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    List<Problem> all = new ArrayList<>();
    base.faults().forEach(f -> look(subject, "fault", f.id(), f.reviewed(), f.where(), all));
    base.checks().forEach(c -> look(subject, "check", c.id(), c.reviewed(), c.where(), all));
    base.symptoms().forEach(s -> look(subject, "symptom", s.id(), s.reviewed(), s.where(), all));
    base.trails().forEach(t -> look(subject, "false trail", t.id(), t.reviewed(), t.where(), all));
    base.walks().forEach(w -> look(subject, "walk", w.id(), w.reviewed(), w.where(), all));
    return all;
  }

  private static void look(
      Subject subject,
      String kind,
      String id,
      Reviewed reviewed,
      Position where,
      List<Problem> problems) {
    LocalDate today = subject.today();
    if (reviewed.on().plusYears(1).isBefore(today)) {
      problems.add(
          Problem.warning(
              where,
              kind + " '" + id + "' was last reviewed on " + reviewed.on(),
              "read the whole entry, correct it, and write today's date to reviewed"));
    } else if (reviewed.on().isAfter(today.plusDays(1))) {
      // A day ahead is another time zone; more would keep the entry from ever being asked for.
      problems.add(
          Problem.warning(
              where,
              kind + " '" + id + "' was reviewed on " + reviewed.on() + ", which is still to come",
              "correct the date"));
    }
  }
}
