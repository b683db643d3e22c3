package standstill.guide;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Circumstance;
import standstill.base.Condition;
import standstill.rank.Observations;

/**
 * What is known of the system and of the machine, in the words that conditions use: cases of
 * circumstances and facts. A word in neither set is open.
 *
 * @param there what is so
 * @param notThere what is not so
 */
public record Known(Set<String> there, Set<String> notThere) {
  /** Nothing is known. */
  public static final Known NOTHING = new Known(Set.of(), Set.of());

  public Known {
    there = Set.copyOf(there);
    notThere = Set.copyOf(notThere);
  }

  /**
   * What cases say: where one case of a circumstance is left, it is there; those that are out of
   * the question are not.
   *
   * @param circumstances in what respects systems differ
   * @param cases id of a circumstance to the words of the cases that come into question
   */
  public static Known of(List<Circumstance> circumstances, Map<String, Set<String>> cases) {
    Set<String> there = new HashSet<>();
    Set<String> notThere = new HashSet<>();
    for (Circumstance circumstance : circumstances) {
      Set<String> open = cases.getOrDefault(circumstance.id(), Set.of());
      if (!open.isEmpty()) {
        circumstance.cases().stream()
            .map(Circumstance.Case::id)
            .filter(word -> !open.contains(word))
            .forEach(notThere::add);
        if (open.size() == 1) {
          there.addAll(open);
        }
      }
    }
    return new Known(there, notThere);
  }

  /** The same with facts. */
  public Known with(Set<String> facts, Set<String> absent) {
    Set<String> more = new HashSet<>(there);
    more.addAll(facts);
    Set<String> less = new HashSet<>(notThere);
    less.addAll(absent);
    return new Known(more, less);
  }

  /** Whether nothing that is known, and no answer, speaks against the conditions. */
  boolean allows(List<Condition> when, Observations said) {
    return when.stream().noneMatch(condition -> speaksAgainst(condition, said));
  }

  private boolean speaksAgainst(Condition condition, Observations said) {
    if (condition.isAnswer()) {
      String given = said.answers().getOrDefault(condition.check(), Observations.UNKNOWN);
      return !given.equals(Observations.UNKNOWN)
          && given.equals(condition.answer()) != condition.there();
    }
    return (condition.there() ? notThere : there).contains(condition.name());
  }
}
