package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Position;

/**
 * An observation that tells faults apart.
 *
 * @param id name
 * @param title the question
 * @param how steps to find the answer
 * @param minutes how long it takes
 * @param risk what it puts at risk
 * @param needs things that the person must have
 * @param cautions to be read before
 * @param when what has to be so for it to make sense
 * @param answers two to five; "I don't know" is not among them
 * @param sources where it comes from
 * @param reviewed when somebody last looked at the entry
 * @param where its file
 */
public record Check(
    String id,
    String title,
    List<String> how,
    int minutes,
    Risk risk,
    List<String> needs,
    List<String> cautions,
    List<Condition> when,
    List<Answer> answers,
    List<Source> sources,
    Reviewed reviewed,
    Position where) {
  public Check {
    how = List.copyOf(how);
    needs = List.copyOf(needs);
    cautions = List.copyOf(cautions);
    when = List.copyOf(when);
    answers = List.copyOf(answers);
    sources = List.copyOf(sources);
  }

  /** The answer of that name. */
  public Optional<Answer> answer(String id) {
    return answers.stream().filter(a -> a.id().equals(id)).findFirst();
  }

  /**
   * A possible answer.
   *
   * @param id name within the check
   * @param text what the person sees
   * @param otherwise P(answer | a fault that does not mention the check), before scaling to sum 1
   */
  public record Answer(String id, String text, Chance otherwise) {}
}
