package standstill.match;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Circumstance;
import standstill.base.Example;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.machine.MachineReader;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/** Finds in a boot what its system is like, as far as repairs depend on it. */
public final class Surroundings {
  private final List<Circumstance.Case> cases = new ArrayList<>();
  private final PatternSet patterns;

  /** Looks for the circumstances of a base. */
  public Surroundings(Base base) {
    List<Pattern> all = new ArrayList<>();
    for (Circumstance circumstance : base.circumstances()) {
      for (Circumstance.Case each : circumstance.cases()) {
        for (Example tell : each.tells()) {
          cases.add(each);
          all.add(tell.line());
        }
      }
    }
    patterns = new PatternSet(all);
  }

  /**
   * Ids of circumstances to the words of the cases that the boot shows. Several cases of one
   * circumstance can show, as a system may carry more than one loader.
   */
  public Map<String, Set<String>> of(Boot boot) {
    Map<String, Set<String>> found = new LinkedHashMap<>();
    for (LogLine line : boot.lines()) {
      String text = MachineReader.bounded(line.message());
      patterns.candidates(
          text,
          boot.mayBeTyped(),
          (pattern, place) -> {
            Circumstance.Case each = cases.get(place);
            Set<String> words =
                found.computeIfAbsent(each.circumstance(), k -> new LinkedHashSet<>());
            if (!words.contains(each.id()) && pattern.foundIn(text)) {
              words.add(each.id());
            }
          });
    }
    found.values().removeIf(Set::isEmpty);
    return found;
  }
}
