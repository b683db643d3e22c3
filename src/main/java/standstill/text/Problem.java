package standstill.text;

import java.util.Comparator;

/**
 * Something wrong at a place: what is wrong, and what to do about it.
 *
 * @param position where
 * @param severity whether it stops the base from being used
 * @param message what is wrong; lower case, no final stop
 * @param excerpt the source line with a caret below the column, or empty
 * @param advice what is allowed or what to do, or empty
 */
public record Problem(
    Position position, Severity severity, String message, String excerpt, String advice)
    implements Comparable<Problem> {

  /** How grave a problem is. */
  public enum Severity {
    /** The base can't be used. */
    ERROR,
    /** The base can be used; somebody should look. */
    WARNING
  }

  private static final Comparator<Problem> ORDER =
      Comparator.comparing(Problem::position).thenComparing(Problem::message);

  /** An error without an excerpt. */
  public static Problem error(Position position, String message, String advice) {
    return new Problem(position, Severity.ERROR, message, "", advice);
  }

  /** A warning without an excerpt. */
  public static Problem warning(Position position, String message, String advice) {
    return new Problem(position, Severity.WARNING, message, "", advice);
  }

  /** Whether the base can't be used with it. */
  public boolean isError() {
    return severity == Severity.ERROR;
  }

  @Override
  public int compareTo(Problem other) {
    return ORDER.compare(this, other);
  }

  /** The whole message, over several lines. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder();
    out.append(position).append(": ");
    if (severity == Severity.WARNING) {
      out.append("warning: ");
    }
    out.append(message);
    if (!excerpt.isEmpty()) {
      excerpt.lines().forEach(line -> out.append("\n    ").append(line));
    }
    if (!advice.isEmpty()) {
      out.append("\n  ").append(advice);
    }
    return out.toString();
  }
}
