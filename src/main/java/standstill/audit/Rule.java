package standstill.audit;

import java.util.List;
import standstill.base.Base;
import standstill.text.Problem;

/** One rule on the base as a whole. */
interface Rule {
  /** What breaks the rule. */
  List<Problem> problems(Base base);
}
