package standstill.audit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.FixStep;
import standstill.base.Placeholders;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.text.Problem;

/** A name that stands in steps for a value is one that a sign of the fault can catch. */
final class CaughtValues implements Rule {
  @Override
  public String id() {
    return "caught-values";
  }

  @Override
  public String title() {
    return "What stands in steps for a value can be caught, and is used";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : subject.base().faults()) {
      Set<String> groups = new LinkedHashSet<>();
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine onLine) {
          groups.addAll(onLine.line().groups());
        }
      }
      Set<String> used = new LinkedHashSet<>();
      Set<String> declared = new LinkedHashSet<>();
      for (Fix fix : fault.fixes()) {
        declared.addAll(fix.scope().values().keySet());
        fix.steps().forEach(step -> used(step, used));
      }
      for (String name : declared) {
        if (!used.contains(name)) {
          problems.add(
              Problem.warning(
                  fault.where(),
                  "value '" + name + "' stands in no step",
                  "write {" + name + "} where it belongs, or take it out of 'values'"));
        } else if (!groups.contains(name)) {
          problems.add(
              Problem.warning(
                  fault.where(),
                  "no sign of this fault catches '" + name + "'",
                  "name a group of a sign's pattern so, or write the words out in the step"));
        }
      }
    }
    return problems;
  }

  private static void used(FixStep step, Set<String> names) {
    FixStep.Terms terms = step.terms();
    for (String text : List.of(terms.caution(), terms.undo(), terms.saveFirst())) {
      names.addAll(Placeholders.in(text));
    }
    if (step instanceof FixStep.Group group) {
      group.steps().forEach(s -> used(s, names));
    } else {
      names.addAll(Placeholders.in(((FixStep.Doing) step).text()));
    }
  }
}
