package standstill.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.text.Problem;

/** No fault has the same sign twice. */
final class SameSignTwice implements Rule {
  @Override
  public String id() {
    return "same-sign-twice";
  }

  @Override
  public String title() {
    return "No fault has the same sign twice";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : subject.base().faults()) {
      Map<String, Sign> seen = new HashMap<>();
      for (Sign sign : fault.signs()) {
        Sign first = seen.putIfAbsent(sign.form().describe(), sign);
        if (first != null) {
          problems.add(
              Problem.error(
                  sign.where(),
                  "sign stands in this fault a second time",
                  "the first is at " + first.where() + "; remove one"));
        }
      }
    }
    return problems;
  }
}
