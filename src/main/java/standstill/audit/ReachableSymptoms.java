package standstill.audit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Stage;
import standstill.base.Symptom;
import standstill.text.Problem;

/**
 * Every symptom is offered in a stage in which one of its faults stops boots.
 *
 * <p>People choose symptoms stage by stage; one that stands only in stages where none of its faults
 * stops leads nowhere.
 */
final class ReachableSymptoms implements Rule {
  @Override
  public String id() {
    return "unreachable-symptom";
  }

  @Override
  public String title() {
    return "Every symptom is offered in a stage in which one of its faults stops boots";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    List<Problem> problems = new ArrayList<>();
    for (Symptom symptom : base.symptoms()) {
      Set<Stage> stops = EnumSet.noneOf(Stage.class);
      for (Fault fault : base.faults()) {
        if (fault.symptoms().contains(symptom.id())) {
          stops.addAll(fault.stopsIn());
        }
      }
      if (!stops.isEmpty() && Collections.disjoint(stops, symptom.stages())) {
        problems.add(
            Problem.error(
                symptom.where(),
                "symptom '" + symptom.id() + "' is offered where none of its faults stops boots",
                "its faults stop in: "
                    + stops.stream().map(Stage::word).collect(Collectors.joining(", "))));
      }
    }
    return problems;
  }
}
