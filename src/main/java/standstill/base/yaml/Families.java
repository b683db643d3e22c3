package standstill.base.yaml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Family;
import standstill.base.Milestone;

/** Puts families together out of the ones that they include, and reports what cannot be. */
final class Families {
  /** Told of what is wrong. */
  interface Report {
    /**
     * Takes one report.
     *
     * @param in the family that is wrong
     * @param what the kind of thing that it names
     * @param name its name
     * @param message what is wrong
     * @param advice what to do
     */
    void add(Family in, String what, String name, String message, String advice);
  }

  private final Map<String, Family> written = new LinkedHashMap<>();
  private final Map<String, Family> whole = new LinkedHashMap<>();
  private final List<String> under = new ArrayList<>();
  private final Report report;

  private Families(List<Family> families, Report report) {
    families.forEach(family -> written.putIfAbsent(family.id(), family));
    this.report = report;
  }

  /** The families in their order, each with what it includes. */
  static List<Family> compose(List<Family> families, Report report) {
    Families all = new Families(families, report);
    List<Family> composed = new ArrayList<>();
    for (Family family : all.written.values()) {
      composed.add(all.whole(family));
    }
    return composed;
  }

  private Family whole(Family family) {
    Family known = whole.get(family.id());
    if (known != null) {
      return known;
    }
    under.add(family.id());
    List<Family> included = new ArrayList<>();
    for (String id : family.include()) {
      Family part = written.get(id);
      if (part == null) {
        report.add(
            family,
            "family",
            id,
            "unknown family in include: '" + id + "'",
            Words.advice(id, others(family)));
      } else if (under.contains(id)) {
        List<String> circle = new ArrayList<>(under.subList(under.indexOf(id), under.size()));
        circle.add(id);
        report.add(
            family,
            "family",
            id,
            "families include each other in a circle: " + String.join(" > ", circle),
            "take one of them out of include");
      } else {
        included.add(whole(part));
      }
    }
    under.remove(under.size() - 1);
    Family composed = family.with(included);
    distinct(family, composed.milestones());
    whole.put(family.id(), composed);
    return composed;
  }

  private void distinct(Family family, List<Milestone> milestones) {
    Set<String> seen = new HashSet<>();
    for (Milestone milestone : milestones) {
      if (!seen.add(milestone.id()) && family.milestone(milestone.id()).isPresent()) {
        report.add(
            family,
            "milestone",
            milestone.id(),
            "second milestone with the id '" + milestone.id() + "'",
            "the first stands in this file or in a family that it includes; give this one another id");
      }
    }
  }

  private List<String> others(Family family) {
    return written.keySet().stream().filter(id -> !id.equals(family.id())).toList();
  }
}
