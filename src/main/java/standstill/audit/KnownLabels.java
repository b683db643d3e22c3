package standstill.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import standstill.base.Label;
import standstill.text.Problem;

/** Every label of a boot names faults that the base has. */
final class KnownLabels implements Rule {
  @Override
  public String id() {
    return "boot-labels";
  }

  @Override
  public String title() {
    return "Labels of boots name faults that the base has";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    List<Problem> problems = new ArrayList<>();
    for (Subject.Labelled boot : subject.boots()) {
      Label label = boot.label();
      Stream.of(
              label.isFault() ? List.of(label.label()) : List.<String>of(),
              label.also(),
              label.general())
          .flatMap(List::stream)
          .filter(id -> subject.base().fault(id).isEmpty())
          .forEach(
              id ->
                  problems.add(
                      Problem.error(
                          label.where(),
                          "unknown fault: '" + id + "'",
                          "a label names faults by their ids; 'healthy' and 'unlisted' stand alone")));
    }
    return problems;
  }
}
