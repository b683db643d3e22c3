package standstill.base;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A whole fault base.
 *
 * @param scale what words mean
 * @param families by kernel
 * @param stops what boots end in
 * @param faults every fault
 * @param checks every check
 * @param symptoms every symptom
 * @param trails every false trail
 * @param walks walks written by hand
 * @param rates measured background rates by sign id; signs that were never measured are absent
 * @param synonyms words that mean the same in a search
 * @param retired former ids of fixes to those of their successors, both with their fault's; besides
 *     those that a fault itself names
 * @param circumstances in what respects systems differ
 * @param blocks steps that repairs share
 */
public record Base(
    Scale scale,
    List<Family> families,
    List<Stop> stops,
    List<Fault> faults,
    List<Check> checks,
    List<Symptom> symptoms,
    List<Trail> trails,
    List<Walk> walks,
    Map<String, Rate> rates,
    List<Synonyms> synonyms,
    Map<String, String> retired,
    List<Circumstance> circumstances,
    List<StepBlock> blocks) {
  private static final int MOST_SUCCESSIONS = 20;

  public Base {
    families = List.copyOf(families);
    stops = List.copyOf(stops);
    faults = List.copyOf(faults);
    checks = List.copyOf(checks);
    symptoms = List.copyOf(symptoms);
    trails = List.copyOf(trails);
    walks = List.copyOf(walks);
    rates = Collections.unmodifiableMap(new LinkedHashMap<>(rates));
    synonyms = List.copyOf(synonyms);
    retired = Map.copyOf(retired);
    circumstances = List.copyOf(circumstances);
    blocks = List.copyOf(blocks);
  }

  /** A base without stops, walks and synonyms. */
  public Base(
      Scale scale,
      List<Family> families,
      List<Fault> faults,
      List<Check> checks,
      List<Symptom> symptoms,
      List<Trail> trails,
      Map<String, Rate> rates) {
    this(
        scale, families, List.of(), faults, checks, symptoms, trails, List.of(), rates, List.of(),
        Map.of(), List.of(), List.of());
  }

  /** The family of that id. */
  public Optional<Family> family(String id) {
    return families.stream().filter(f -> f.id().equals(id)).findFirst();
  }

  /** The fault of that id, or the one that once had it. */
  public Optional<Fault> fault(String id) {
    return faults.stream()
        .filter(f -> f.id().equals(id))
        .findFirst()
        .or(() -> faults.stream().filter(f -> f.aliases().contains(id)).findFirst());
  }

  /** The fix of that id, or the successor of the one that once had it. */
  public Optional<Fix> fix(String id) {
    String now = id;
    for (int i = 0; i < MOST_SUCCESSIONS; i++) {
      String sought = now;
      Optional<Fault> fault = faultOfFix(sought);
      Optional<Fix> found =
          fault.flatMap(
              f -> f.fixes().stream().filter(x -> x.own().equals(Fix.own(sought))).findFirst());
      if (found.isPresent()) {
        return found;
      }
      String successor =
          fault
              .map(f -> f.retired().get(Fix.own(sought)))
              .map(own -> Fix.id(fault.get().id(), own))
              .orElse(retired.get(sought));
      if (successor == null) {
        return Optional.empty();
      }
      now = successor;
    }
    return Optional.empty();
  }

  /** The fault whose id, or one of whose former ids, a fix's id begins with. */
  public Optional<Fault> faultOfFix(String fixId) {
    int at = fixId.indexOf(Fix.BETWEEN);
    return at < 0 ? Optional.empty() : fault(fixId.substring(0, at));
  }

  /** Ids of all faults that a fault ends in, over any number of links. */
  public Set<String> outcomes(Fault fault) {
    Set<String> seen = new HashSet<>();
    ArrayDeque<Fault> open = new ArrayDeque<>();
    open.add(fault);
    while (!open.isEmpty()) {
      for (String id : open.remove().leadsTo()) {
        fault(id).filter(next -> seen.add(next.id())).ifPresent(open::add);
      }
    }
    return seen;
  }

  /** The check of that id. */
  public Optional<Check> check(String id) {
    return checks.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /** The false trail of that id. */
  public Optional<Trail> trail(String id) {
    return trails.stream().filter(t -> t.id().equals(id)).findFirst();
  }

  /** The id of the family that most faults of the base occur in; empty when it has none. */
  public String mostCommonFamily() {
    return families.stream()
        .map(Family::id)
        .max(Comparator.comparingInt(id -> faultsOf(id).size()))
        .orElse("");
  }

  /** The symptom of that id. */
  public Optional<Symptom> symptom(String id) {
    return symptoms.stream().filter(s -> s.id().equals(id)).findFirst();
  }

  /** The walk of that id. */
  public Optional<Walk> walk(String id) {
    return walks.stream().filter(w -> w.id().equals(id)).findFirst();
  }

  /** The stop of that id, or the one that once had it. */
  public Optional<Stop> stop(String id) {
    return stops.stream()
        .filter(s -> s.id().equals(id))
        .findFirst()
        .or(() -> stops.stream().filter(s -> s.aliases().contains(id)).findFirst());
  }

  /** Stops that occur in a family or in one that it includes, in the order of their files. */
  public List<Stop> stopsOf(String family) {
    return family(family)
        .map(known -> stops.stream().filter(s -> known.isAmong(s.families())).toList())
        .orElse(List.of());
  }

  /** Stops that occur in a family in which the fault occurs. */
  public List<Stop> stopsOf(Fault fault) {
    return stops.stream().filter(s -> canMeet(s.families(), fault.families())).toList();
  }

  /**
   * Faults that occur in a family or in one that it includes, in the order of their files.
   *
   * @param family its id
   */
  public List<Fault> faultsOf(String family) {
    return family(family)
        .map(known -> faults.stream().filter(f -> known.isAmong(f.families())).toList())
        .orElse(List.of());
  }

  /** Whether entries of these two sets of families can speak of one boot. */
  public boolean canMeet(Collection<String> some, Collection<String> others) {
    return families.stream().anyMatch(f -> f.isAmong(some) && f.isAmong(others));
  }

  /** What circumstances can be, by its word. */
  public Optional<Circumstance.Case> caseOf(String word) {
    return circumstances.stream().flatMap(c -> c.option(word).stream()).findFirst();
  }

  /** The shared steps of that id. */
  public Optional<StepBlock> block(String id) {
    return blocks.stream().filter(b -> b.id().equals(id)).findFirst();
  }

  /**
   * The same base without one fault: how the tool behaves for a cause that nobody has listed yet.
   */
  public Base without(String faultId) {
    List<Fault> kept = new ArrayList<>(faults);
    kept.removeIf(f -> f.id().equals(faultId));
    return with(scale, kept, rates, retired);
  }

  /** The same base with other numbers of the model. */
  public Base withModel(Map<String, Double> model) {
    return with(scale.withModel(model), faults, rates, retired);
  }

  /** The same base with other former ids of fixes. */
  public Base withRetired(Map<String, String> others) {
    return with(scale, faults, rates, others);
  }

  /** The same base with other background rates. */
  public Base withRates(Map<String, Rate> others) {
    return with(scale, faults, others, retired);
  }

  private Base with(
      Scale newScale,
      List<Fault> newFaults,
      Map<String, Rate> newRates,
      Map<String, String> newRetired) {
    return new Base(
        newScale,
        families,
        stops,
        newFaults,
        checks,
        symptoms,
        trails,
        walks,
        newRates,
        synonyms,
        newRetired,
        circumstances,
        blocks);
  }
}
