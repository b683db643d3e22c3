package standstill.trace;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import standstill.base.Stage;

/**
 * How far a boot came.
 *
 * @param stage where progress ended; a guess from the kind of paste when no milestone was seen
 * @param known whether a milestone was seen
 * @param milestones those that were seen, first sightings, in the order of the lines
 * @param covers stages of which the paste shows lines
 * @param complete stages that the paste shows from their beginning, so that a missing line means
 *     something
 * @param gaps the longest silences, longest first
 * @param loops lines that repeat, most frequent first
 * @param lastLine number of the last line with text; 0 when there is none
 * @param stageAt for every line of the boot, the stage reached by then
 * @param endedAt place in the boot of the line that says that the last stage ended well; empty when
 *     none does
 * @param readOut whether the lines were read out of the kernel's buffer on a system that runs
 */
public record Trace(
    Stage stage,
    boolean known,
    List<Reached> milestones,
    Set<Stage> covers,
    Set<Stage> complete,
    List<Gap> gaps,
    List<Loop> loops,
    int lastLine,
    List<Stage> stageAt,
    OptionalInt endedAt,
    boolean readOut) {
  public Trace {
    milestones = List.copyOf(milestones);
    covers = Set.copyOf(covers);
    complete = Set.copyOf(complete);
    gaps = List.copyOf(gaps);
    loops = List.copyOf(loops);
    stageAt = List.copyOf(stageAt);
  }

  /** The first sighting of a milestone. */
  public Optional<Reached> milestone(String id) {
    return milestones.stream().filter(r -> r.milestone().id().equals(id)).findFirst();
  }

  /** The same, with a guess of the stage where no milestone told it. */
  public Trace guessed(Stage guess) {
    return known
        ? this
        : new Trace(
            guess,
            false,
            milestones,
            covers,
            complete,
            gaps,
            loops,
            lastLine,
            stageAt,
            endedAt,
            readOut);
  }
}
