package standstill.audit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Symptom;
import standstill.text.Problem;

/** No check that no fault asks, and no symptom that no fault shows. */
final class NothingUnused implements Rule {
  @Override
  public String id() {
    return "unused";
  }

  @Override
  public String title() {
    return "Every check and symptom is used by a fault";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    List<Problem> problems = new ArrayList<>();
    Set<String> checks = new HashSet<>();
    Set<String> symptoms = new HashSet<>();
    for (Fault fault : base.faults()) {
      checks.addAll(fault.toldApartBy().keySet());
      symptoms.addAll(fault.symptoms());
    }
    for (Check check : base.checks()) {
      if (!checks.contains(check.id())) {
        problems.add(
            Problem.error(
                check.where(),
                "no fault asks the check '" + check.id() + "'",
                "name it in a fault's told-apart-by, or remove it"));
      }
    }
    for (Symptom symptom : base.symptoms()) {
      if (!symptoms.contains(symptom.id())) {
        problems.add(
            Problem.error(
                symptom.where(),
                "no fault shows the symptom '" + symptom.id() + "'",
                "name it in a fault's symptoms, or remove it"));
      }
    }
    return problems;
  }
}
