package standstill.base.yaml;

import java.util.List;
import standstill.base.Base;
import standstill.text.Problem;

/**
 * What came out of reading a base: whatever could be read, and all problems, in the order of their
 * places.
 *
 * @param base the entries that are sound; entries with an error are left out
 * @param problems errors and warnings
 */
public record Loaded(Base base, List<Problem> problems) {
  public Loaded {
    problems = problems.stream().sorted().distinct().toList();
  }

  /** Whether an error stands among the problems. */
  public boolean hasErrors() {
    return problems.stream().anyMatch(Problem::isError);
  }
}
