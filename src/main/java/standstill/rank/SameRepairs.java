package standstill.rank;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.FixStep;

/**
 * Which repairs of different faults are one and the same to the person who does them: their steps
 * are the same, or they have one title and a block or most of their words in common. What is learnt
 * by trying one is then learnt of all.
 */
public final class SameRepairs {
  /** Share of words in common from which steps under one title are taken to do the same. */
  private static final double ALIKE = 0.4;

  private final Map<String, Set<String>> same = new HashMap<>();

  /** The repairs of a base. */
  public SameRepairs(Base base) {
    Map<String, List<Repair>> byTitle = new HashMap<>();
    Map<List<String>, List<Repair>> bySteps = new HashMap<>();
    for (Fault fault : base.faults()) {
      for (Fix fix : fault.fixes()) {
        Repair repair = Repair.of(fix);
        byTitle
            .computeIfAbsent(fix.title().toLowerCase(Locale.ROOT), k -> new ArrayList<>())
            .add(repair);
        bySteps.computeIfAbsent(repair.steps(), k -> new ArrayList<>()).add(repair);
      }
    }
    byTitle.values().forEach(this::join);
    bySteps.values().forEach(this::join);
  }

  private void join(List<Repair> candidates) {
    for (Repair one : candidates) {
      for (Repair other : candidates) {
        if (one != other && one.isLike(other)) {
          same.computeIfAbsent(one.id(), k -> new HashSet<>()).add(other.id());
        }
      }
    }
  }

  /** Whether two ids name the same repair. */
  public boolean same(String one, String other) {
    return one.equals(other) || same.getOrDefault(one, Set.of()).contains(other);
  }

  /** Whether a repair, or the same one of another fault, is among others. */
  public boolean isAmong(String id, Set<String> others) {
    return others.contains(id)
        || same.getOrDefault(id, Set.of()).stream().anyMatch(others::contains);
  }

  /** A repair as its steps, the blocks that they come from, and their words. */
  private record Repair(String id, List<String> steps, Set<String> blocks, Set<String> words) {
    static Repair of(Fix fix) {
      List<String> steps = new ArrayList<>();
      Set<String> blocks = new HashSet<>();
      collect(fix.steps(), steps, blocks);
      // Names that a log fills in differ between faults and say what the step is about.
      steps.add(fix.scope().values().toString());
      Set<String> words = new HashSet<>();
      steps.forEach(
          step -> words.addAll(List.of(step.toLowerCase(Locale.ROOT).split("[^a-z0-9_./-]+"))));
      return new Repair(fix.id(), List.copyOf(steps), blocks, words);
    }

    private static void collect(List<FixStep> from, List<String> steps, Set<String> blocks) {
      for (FixStep step : from) {
        if (step instanceof FixStep.Group group) {
          if (!group.block().isEmpty()) {
            blocks.add(group.block());
          }
          collect(group.steps(), steps, blocks);
        } else {
          steps.add(((FixStep.Doing) step).text());
        }
      }
    }

    boolean isLike(Repair other) {
      if (steps.equals(other.steps)) {
        return true;
      }
      Set<String> both = new HashSet<>(words);
      both.retainAll(other.words);
      return both.size() >= ALIKE * (words.size() + other.words.size() - both.size())
          || !blocks.isEmpty() && blocks.equals(other.blocks);
    }
  }
}
