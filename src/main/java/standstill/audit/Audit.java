package standstill.audit;

import java.util.List;
import standstill.base.Base;
import standstill.text.Problem;

/** All rules on a base: the entry of this room. */
public final class Audit {
  private static final List<Rule> RULES = List.of(new SignTexts(), new NothingUnused());

  private Audit() {}

  /** What breaks any rule, in the order of the places. */
  public static List<Problem> problems(Base base) {
    return RULES.stream()
        .flatMap(rule -> rule.problems(base).stream())
        .sorted()
        .distinct()
        .toList();
  }
}
