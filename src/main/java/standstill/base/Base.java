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
 * @param faults every fault
 * @param checks every check
 * @param symptoms every symptom
 * @param trails every false trail
 * @param walks walks written by hand
 * @param rates measured background rates by sign id; signs that were never measured are absent
 * @param synonyms words that mean the same in a search
 */
public record Base(
    Scale scale,
    List<Family> families,
    List<Fault> faults,
    List<Check> checks,
    List<Symptom> symptoms,
    List<Trail> trails,
    List<Walk> walks,
    Map<String, Rate> rates,
    List<Synonyms> synonyms) {
  public Base {
    families = List.copyOf(families);
    faults = List.copyOf(faults);
    checks = List.copyOf(checks);
    symptoms = List.copyOf(symptoms);
    trails = List.copyOf(trails);
    walks = List.copyOf(walks);
    rates = Collections.unmodifiableMap(new LinkedHashMap<>(rates));
    synonyms = List.copyOf(synonyms);
  }

  /** A base without walks and synonyms. */
  public Base(
      Scale scale,
      List<Family> families,
      List<Fault> faults,
      List<Check> checks,
      List<Symptom> symptoms,
      List<Trail> trails,
      Map<String, Rate> rates) {
    this(scale, families, faults, checks, symptoms, trails, List.of(), rates, List.of());
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

  /**
   * The same base without one fault: how the tool behaves for a cause that nobody has listed yet.
   */
  public Base without(String faultId) {
    List<Fault> kept = new ArrayList<>(faults);
    kept.removeIf(f -> f.id().equals(faultId));
    return new Base(scale, families, kept, checks, symptoms, trails, walks, rates, synonyms);
  }

  /** The same base with other background rates. */
  public Base withRates(Map<String, Rate> others) {
    return new Base(scale, families, faults, checks, symptoms, trails, walks, others, synonyms);
  }
}
