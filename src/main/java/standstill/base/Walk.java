package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Position;

/**
 * A short walk written by hand for one situation.
 *
 * @param id name
 * @param title the situation, for people
 * @param about what the walk does, in a paragraph
 * @param symptoms ids of symptoms at which it is offered
 * @param stages stages at which it is offered
 * @param faults ids of faults at which it is offered when one of them is likely
 * @param steps its steps; the first is where it begins, and each leads only onward
 * @param sources where it comes from
 * @param reviewed when somebody last looked at the entry
 * @param where its file
 */
public record Walk(
    String id,
    String title,
    String about,
    List<String> symptoms,
    List<Stage> stages,
    List<String> faults,
    List<Step> steps,
    List<Source> sources,
    Reviewed reviewed,
    Position where) {
  public Walk {
    symptoms = List.copyOf(symptoms);
    stages = List.copyOf(stages);
    faults = List.copyOf(faults);
    steps = List.copyOf(steps);
    sources = List.copyOf(sources);
  }

  /** The step of that name. */
  public Optional<Step> step(String id) {
    return steps.stream().filter(s -> s.id().equals(id)).findFirst();
  }

  /**
   * A question with its answers.
   *
   * @param id name within the walk
   * @param ask the question
   * @param how steps to find the answer
   * @param minutes how long it takes
   * @param risk what it puts at risk
   * @param cautions to be read before
   * @param answers two to five
   * @param where its place
   */
  public record Step(
      String id,
      String ask,
      List<String> how,
      int minutes,
      Risk risk,
      List<String> cautions,
      List<Answer> answers,
      Position where) {
    public Step {
      how = List.copyOf(how);
      cautions = List.copyOf(cautions);
      answers = List.copyOf(answers);
    }

    /** The answer of that name. */
    public Optional<Answer> answer(String id) {
      return answers.stream().filter(a -> a.id().equals(id)).findFirst();
    }
  }

  /**
   * An answer and where it leads.
   *
   * @param id name within the step
   * @param text what the person sees
   * @param leads what kind of place it leads to
   * @param to id of the step, fault or fix, or what to say when handing over
   * @param where its place
   */
  public record Answer(String id, String text, Leads leads, String to, Position where) {}

  /** Where an answer leads. */
  public enum Leads {
    /** To a later step. */
    STEP,
    /** To a fault: the cause is known. */
    FAULT,
    /** To a fix. */
    FIX,
    /** To somebody more experienced. */
    HAND_OVER
  }
}
