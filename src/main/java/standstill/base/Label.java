package standstill.base;

import java.util.List;
import java.util.Set;
import standstill.text.Position;

/**
 * What is known of a labelled log.
 *
 * @param name name of the label's file without ending
 * @param log name of the log's file beside it
 * @param label id of the fault that stopped the boot, {@link #HEALTHY} or {@link #UNLISTED}
 * @param also ids of other faults that are right as well, because the log can't tell them apart
 * @param general ids of general faults that are right where the base lacks the cause: for an
 *     unlisted one, and when the labelled fault is taken out of the base
 * @param stage where progress ended
 * @param stageAlso stages that are fair as well
 * @param stops ids of the stops that are right; empty where the label does not say
 * @param cut {@code whole}, {@code last-25} or {@code excerpt}
 * @param made how it was provoked
 * @param licence of the log
 * @param where its file
 */
public record Label(
    String name,
    String log,
    String label,
    List<String> also,
    List<String> general,
    Stage stage,
    Set<Stage> stageAlso,
    List<String> stops,
    String cut,
    String made,
    String licence,
    Position where) {
  /** What of the boot a log can show. */
  public static final List<String> CUTS = List.of("whole", "last-25", "excerpt");

  /** The label of a boot that nothing stopped. */
  public static final String HEALTHY = "healthy";

  /** The label of a boot that a cause outside of the base stopped. */
  public static final String UNLISTED = "unlisted";

  public Label {
    also = List.copyOf(also);
    general = List.copyOf(general);
    stageAlso = Set.copyOf(stageAlso);
    stops = List.copyOf(stops);
  }

  /** Whether a stage is a right answer. */
  public boolean accepts(Stage found) {
    return found == stage || stageAlso.contains(found);
  }

  /** Whether a fault stopped it that the base has. */
  public boolean isFault() {
    return !label.equals(HEALTHY) && !label.equals(UNLISTED);
  }

  /** Whether a cause stopped it that the base does not have. */
  public boolean isUnlisted() {
    return label.equals(UNLISTED);
  }

  /** Whether an id is a right answer. */
  public boolean accepts(String id) {
    return label.equals(id) || also.contains(id) || (isUnlisted() && general.contains(id));
  }
}
