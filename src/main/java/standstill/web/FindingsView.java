package standstill.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.text.Problem;

/**
 * Findings by rule, ready for their template.
 *
 * @param ready whether they have been made
 * @param withBoots whether labelled boots were looked at
 */
public record FindingsView(
    boolean ready, boolean withBoots, int errors, int warnings, List<RuleView> rules) {

  /** A rule that something breaks. */
  public record RuleView(String id, String title, List<RowView> rows) {}

  /** One finding; the address leads to the entry and is empty when it has no page. */
  public record RowView(
      boolean error, String place, String href, String message, List<String> advice) {}

  static FindingsView of(Base base, boolean withBoots, Optional<List<Finding>> findings) {
    Map<String, RuleView> rules = new LinkedHashMap<>();
    List<Finding> all = findings.orElse(List.of());
    for (Finding finding : all) {
      rules
          .computeIfAbsent(
              finding.rule(), id -> new RuleView(id, finding.title(), new ArrayList<>()))
          .rows()
          .add(row(base, finding.problem()));
    }
    int errors = (int) all.stream().filter(f -> f.problem().isError()).count();
    return new FindingsView(
        findings.isPresent(),
        withBoots,
        errors,
        all.size() - errors,
        rules.values().stream().sorted(Comparator.comparing(RuleView::id)).toList());
  }

  private static RowView row(Base base, Problem problem) {
    String file = problem.position().file().replace('\\', '/');
    String name = file.substring(file.lastIndexOf('/') + 1).replaceFirst("\\.yaml$", "");
    String href = "";
    if (file.contains("faults/") && base.fault(name).isPresent()) {
      href = "/fault/" + name;
    } else if (file.contains("checks/") && base.check(name).isPresent()) {
      href = "/check/" + name;
    }
    return new RowView(
        problem.isError(),
        problem.position().toString(),
        href,
        problem.message(),
        problem.advice().lines().map(String::strip).toList());
  }
}
