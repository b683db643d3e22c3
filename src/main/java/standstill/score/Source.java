package standstill.score;

import java.util.List;

/**
 * Labelled logs of one origin: a lab, a forum, a corpus. Nothing that is fitted on one source is
 * judged on it.
 *
 * @param name for people
 * @param logs with their labels
 */
public record Source(String name, List<LabelledLog> logs) {
  public Source {
    logs = List.copyOf(logs);
  }
}
