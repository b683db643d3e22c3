package standstill.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Stage;
import standstill.base.Symptom;
import standstill.search.Browse;

/** A symptom, ready for its template. */
public record SymptomView(
    String id,
    String title,
    String look,
    List<String> stages,
    List<String> words,
    List<LinkView> faults,
    List<LinkView> general,
    List<LinkView> checks) {
  private static final int MOST_CHECKS = 6;

  static SymptomView of(Base base, Symptom symptom) {
    List<Fault> causes = new Browse(base).causesOf(symptom.id());
    Map<String, Double> weights = new LinkedHashMap<>();
    for (Fault fault : causes) {
      fault
          .toldApartBy()
          .keySet()
          .forEach(check -> weights.merge(check, fault.howCommon().weight(), Double::sum));
    }
    List<LinkView> checks = new ArrayList<>();
    weights.entrySet().stream()
        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
        .limit(MOST_CHECKS)
        .forEach(
            each ->
                base.check(each.getKey())
                    .ifPresent(
                        check ->
                            checks.add(
                                new LinkView(
                                    "/check/" + check.id(),
                                    check.title(),
                                    check.minutes() + " min"))));
    return new SymptomView(
        symptom.id(),
        symptom.title(),
        symptom.look(),
        symptom.stages().stream().map(Stage::word).toList(),
        symptom.words(),
        links(causes, false),
        links(causes, true),
        checks);
  }

  private static List<LinkView> links(List<Fault> causes, boolean general) {
    return causes.stream()
        .filter(fault -> fault.general() == general)
        .map(
            fault ->
                FaultView.link(
                    fault,
                    fault.stage().word() + ", " + fault.howCommon().word().replace('-', ' ')))
        .toList();
  }
}
