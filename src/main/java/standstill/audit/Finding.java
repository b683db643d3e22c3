package standstill.audit;

import standstill.text.Problem;

/**
 * What a rule found.
 *
 * @param rule the rule's id
 * @param title what the rule asks for
 * @param problem what breaks it, and where
 */
public record Finding(String rule, String title, Problem problem) implements Comparable<Finding> {
  /** What the reader of a file found: its form, and where its references lead. */
  public static Finding ofFile(Problem problem) {
    return new Finding(
        "files", "Files are well-formed and their references lead somewhere", problem);
  }

  /** By place. */
  @Override
  public int compareTo(Finding other) {
    return problem.compareTo(other.problem);
  }
}
