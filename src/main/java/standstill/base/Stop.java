package standstill.base;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.text.Position;

/**
 * What a boot ended in, as far as its text shows: the symptom in the log, not the cause.
 *
 * @param id names the stop, for ever
 * @param title what happened, in a sentence
 * @param families ids of the families in which it occurs
 * @param stages stages in which boots end so
 * @param howCommon how common it is among all boots that people ask about
 * @param about one paragraph, plain language
 * @param nothing whether it says that nothing stopped
 * @param unlisted share of the boots that end so and have a cause that the base does not list
 * @param general ids of the general faults that stand for another cause of it; their signs are
 *     signs of the stop
 * @param signs further signs of the stop
 * @param looks ids of the checks that help most where the cause is open, best first
 * @param sources where the statements come from
 * @param reviewed when somebody last looked at the entry
 * @param aliases former ids
 * @param where its file
 */
public record Stop(
    String id,
    String title,
    List<String> families,
    Set<Stage> stages,
    Fault.Frequency howCommon,
    String about,
    boolean nothing,
    Chance unlisted,
    List<String> general,
    List<Sign> signs,
    List<String> looks,
    List<Source> sources,
    Reviewed reviewed,
    List<String> aliases,
    Position where) {
  public Stop {
    families = List.copyOf(families);
    stages = Set.copyOf(stages);
    general = List.copyOf(general);
    signs = List.copyOf(signs);
    looks = List.copyOf(looks);
    sources = List.copyOf(sources);
    aliases = List.copyOf(aliases);
  }

  /** By the id alone: the ids of a base are unique, and entries are keys of maps all the time. */
  @Override
  public int hashCode() {
    return id.hashCode();
  }

  /** The stop as something that has signs, for those who look for signs in lines. */
  public Fault bearer() {
    return new Fault(
        id,
        title,
        true,
        families,
        stages.stream().min(Stage::compareTo).orElse(Stage.KERNEL),
        stages.isEmpty() ? EnumSet.allOf(Stage.class) : stages,
        "",
        howCommon,
        about,
        List.of(),
        signs,
        List.of(),
        Map.of(),
        Map.of(),
        List.of(),
        "",
        sources,
        reviewed,
        aliases,
        Map.of(),
        where);
  }
}
