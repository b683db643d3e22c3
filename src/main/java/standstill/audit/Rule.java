package standstill.audit;

import java.util.List;
import standstill.text.Problem;

/** One rule on the base as a whole. */
interface Rule {
  /** Its name in JSON, for ever: lower-case words joined by hyphens. */
  String id();

  /** What it asks for, in a few words. */
  String title();

  /** What breaks the rule. */
  List<Problem> problems(Subject subject);
}
