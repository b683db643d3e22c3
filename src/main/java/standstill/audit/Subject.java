package standstill.audit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import standstill.base.Base;
import standstill.base.Label;
import standstill.report.Diagnoser;
import standstill.report.Sighting;
import standstill.score.LabelledLog;

/**
 * What the rules look at.
 *
 * @param base the base
 * @param boots its labelled boots, read and matched once for all rules; none when the base came
 *     without them
 * @param today the day of the audit
 */
record Subject(Base base, List<Labelled> boots, LocalDate today) {
  Subject {
    boots = List.copyOf(boots);
  }

  /**
   * A labelled boot.
   *
   * @param label what is known of it
   * @param seen what is to be seen in it; empty when it was not taken for a boot log
   */
  record Labelled(Label label, Optional<Sighting> seen) {}

  static Subject of(Base base, List<LabelledLog> logs, LocalDate today) {
    Diagnoser diagnoser = new Diagnoser(base);
    List<Labelled> boots = new ArrayList<>();
    for (LabelledLog log : logs) {
      boots.add(new Labelled(log.label(), diagnoser.sight(diagnoser.read(log.bytes()), 0)));
    }
    return new Subject(base, boots, today);
  }
}
