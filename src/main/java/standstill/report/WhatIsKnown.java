package standstill.report;

import java.util.Collection;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Given;
import standstill.base.Statement;
import standstill.guide.Known;
import standstill.machine.Said;

/** What a log and its reader say of the system and the machine, in the words of conditions. */
public final class WhatIsKnown {
  private WhatIsKnown() {}

  /**
   * What is known.
   *
   * @param report of the log; empty without one
   * @param said words of circumstances, by the reader; they outrank what a log seems to show
   */
  public static Known of(Base base, Optional<Report> report, Collection<String> said) {
    Optional<Report.Diagnosis> diagnosis = report.flatMap(Report::diagnosis);
    Map<String, Set<String>> cases = diagnosis.map(Report.Diagnosis::cases).orElse(Map.of());
    Known known =
        Known.of(base.circumstances(), new Given(cases, Map.of()).saying(base, said).cases());
    return diagnosis
        .flatMap(Report.Diagnosis::machine)
        .map(
            machine -> {
              Set<String> there = new HashSet<>();
              Set<String> absent = new HashSet<>();
              for (Statement statement : Statement.values()) {
                Said.Verdict verdict = machine.says(statement).verdict();
                if (verdict != Said.Verdict.NOT_COVERED) {
                  (verdict == Said.Verdict.SEEN ? there : absent).add(statement.word());
                }
              }
              return known.with(there, absent);
            })
        .orElse(known);
  }
}
