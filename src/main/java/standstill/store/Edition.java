package standstill.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import standstill.base.Base;
import standstill.base.Label;
import standstill.base.yaml.LabelReader;
import standstill.guide.Guide;
import standstill.report.Diagnoser;
import standstill.search.Browse;
import standstill.search.Search;
import standstill.text.Problem;

/**
 * The base as it was read at one time, and everything that is made from it. It never changes, so
 * that whoever began with an edition can end with it while others already use the next one.
 *
 * @param number goes up by one with every edition of a running program
 * @param base what was read
 * @param diagnoser over the base
 * @param guide over the base
 * @param browse over the base
 * @param search over the base
 * @param boots labelled boots by the id of the fault that stopped them
 * @param warnings what is wrong with the base or its labels and does not stop its use
 * @param since when it came into use
 */
public record Edition(
    int number,
    Base base,
    Diagnoser diagnoser,
    Guide guide,
    Browse browse,
    Search search,
    Map<String, List<Label>> boots,
    List<Problem> warnings,
    Instant since) {
  public Edition {
    boots = Map.copyOf(boots);
    warnings = warnings.stream().sorted().toList();
  }

  static Edition of(
      int number,
      Base base,
      LabelReader.Labels labels,
      List<Problem> warnings,
      Function<Base, Search> searching,
      Instant since) {
    Map<String, List<Label>> boots = new LinkedHashMap<>();
    for (Label label : labels.labels()) {
      base.fault(label.label())
          .ifPresent(
              fault -> boots.computeIfAbsent(fault.id(), id -> new ArrayList<>()).add(label));
    }
    boots.replaceAll((id, list) -> List.copyOf(list));
    List<Problem> all = new ArrayList<>(warnings);
    all.addAll(labels.problems());
    return new Edition(
        number,
        base,
        new Diagnoser(base),
        new Guide(base),
        new Browse(base),
        searching.apply(base),
        boots,
        all,
        since);
  }

  /** The labelled boots that a fault stopped, in the order of their files. */
  public List<Label> bootsOf(String fault) {
    return boots.getOrDefault(fault, List.of());
  }
}
