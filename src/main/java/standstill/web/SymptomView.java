package standstill.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.base.Symptom;
import standstill.rank.Cause;
import standstill.report.Percent;
import standstill.store.Edition;

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

  static SymptomView of(Edition edition, Symptom symptom) {
    Base base = edition.base();
    List<Cause> causes = edition.guide().causesOf(symptom.id());
    Map<String, Double> weights = new LinkedHashMap<>();
    for (Cause cause : causes) {
      cause
          .fault()
          .toldApartBy()
          .keySet()
          .forEach(check -> weights.merge(check, cause.probability(), Double::sum));
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

  private static List<LinkView> links(List<Cause> causes, boolean general) {
    return causes.stream()
        .filter(cause -> cause.fault().general() == general)
        .map(
            cause ->
                FaultView.link(
                    cause.fault(),
                    cause.fault().stage().word() + ", " + Percent.of(cause.probability())))
        .toList();
  }
}
