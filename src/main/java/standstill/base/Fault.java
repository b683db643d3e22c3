package standstill.base;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.text.Position;

/**
 * A cause that someone can act on.
 *
 * @param id names the cause, for ever
 * @param title the cause in a sentence
 * @param general whether it only says what can be said of a part or stage; it steps back when a
 *     specific fault of the same part has been seen
 * @param families ids of the families that it occurs in
 * @param stage where the cause belongs
 * @param stopsIn stages in which the boot may end because of it
 * @param part part of the machine
 * @param howCommon relative frequency among causes
 * @param about one paragraph, plain language
 * @param symptoms ids
 * @param signs what it leaves in a log
 * @param endsIn ids of stops in which boots with this fault end, each with P(stop | this fault), as
 *     written
 * @param leadsTo ids of faults whose signs this one also produces
 * @param toldApartBy check id to answer id to P(answer | this fault), as written
 * @param fixes repairs, as written
 * @param prevent how to keep it from coming back
 * @param sources where the statements come from
 * @param reviewed when somebody last looked at the entry
 * @param aliases former ids
 * @param retired former ids of its signs and fixes to the ids of their successors, both without the
 *     fault's own
 * @param where its file
 */
public record Fault(
    String id,
    String title,
    boolean general,
    List<String> families,
    Stage stage,
    Set<Stage> stopsIn,
    String part,
    Frequency howCommon,
    String about,
    List<String> symptoms,
    List<Sign> signs,
    List<String> leadsTo,
    Map<String, Chance> endsIn,
    Map<String, Map<String, Chance>> toldApartBy,
    List<Fix> fixes,
    String prevent,
    List<Source> sources,
    Reviewed reviewed,
    List<String> aliases,
    Map<String, String> retired,
    Position where) {
  public Fault {
    families = List.copyOf(families);
    stopsIn = Set.copyOf(stopsIn);
    symptoms = List.copyOf(symptoms);
    signs = List.copyOf(signs);
    leadsTo = List.copyOf(leadsTo);
    endsIn = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(endsIn));
    toldApartBy = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(toldApartBy));
    fixes = List.copyOf(fixes);
    sources = List.copyOf(sources);
    aliases = List.copyOf(aliases);
    retired = Map.copyOf(retired);
  }

  /** By the id alone: the ids of a base are unique, and entries are keys of maps all the time. */
  @Override
  public int hashCode() {
    return id.hashCode();
  }

  /**
   * How common a fault is among causes of stalled boots.
   *
   * @param word the word of the scale
   * @param weight relative to the other words
   */
  public record Frequency(String word, double weight) {}
}
