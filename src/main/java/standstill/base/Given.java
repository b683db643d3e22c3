package standstill.base;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/**
 * What is known of the system that a repair is for: from its log, and from what the reader says.
 *
 * @param cases id of a circumstance to the words of its cases that come into question; a
 *     circumstance of which nothing is known is absent
 * @param values names to values that the log gives, fit to be typed into a command
 */
public record Given(Map<String, Set<String>> cases, Map<String, String> values) {
  /** Nothing is known. */
  public static final Given NOTHING = new Given(Map.of(), Map.of());

  public Given {
    Map<String, Set<String>> copy = new LinkedHashMap<>();
    cases.forEach((id, words) -> copy.put(id, Set.copyOf(words)));
    cases = Map.copyOf(copy);
    values = Map.copyOf(values);
  }

  /** The same with what a reader says; it outranks what a log seems to show. */
  public Given saying(Base base, Iterable<String> words) {
    Map<String, Set<String>> said = new LinkedHashMap<>();
    for (String word : words) {
      base.caseOf(word)
          .ifPresent(
              c -> said.computeIfAbsent(c.circumstance(), k -> new LinkedHashSet<>()).add(word));
    }
    Map<String, Set<String>> all = new LinkedHashMap<>(cases);
    all.putAll(said);
    return new Given(all, values);
  }

  /** The same with values of a log. */
  public Given with(Map<String, String> others) {
    return new Given(cases, others);
  }

  /** Whether a step is for this system, as far as is known. */
  boolean fits(FixStep.Terms terms) {
    return byCircumstance(terms).entrySet().stream()
        .allMatch(
            wanted -> {
              Set<String> known = cases.getOrDefault(wanted.getKey(), Set.of());
              return known.isEmpty() || known.stream().anyMatch(wanted.getValue()::contains);
            });
  }

  /** Whether a step is certainly for this system, and not just perhaps. */
  boolean tells(FixStep.Terms terms) {
    return byCircumstance(terms).entrySet().stream()
        .allMatch(
            wanted -> {
              Set<String> known = cases.getOrDefault(wanted.getKey(), Set.of());
              return !known.isEmpty() && wanted.getValue().containsAll(known);
            });
  }

  private static Map<String, Set<String>> byCircumstance(FixStep.Terms terms) {
    Map<String, Set<String>> wanted = new LinkedHashMap<>();
    terms
        .on()
        .forEach(
            c -> wanted.computeIfAbsent(c.circumstance(), k -> new LinkedHashSet<>()).add(c.id()));
    return wanted;
  }
}
