package standstill.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Source;

/** A check, ready for its template. */
public record CheckView(
    String id,
    String title,
    int minutes,
    String risk,
    List<String> needs,
    List<String> cautions,
    List<String> how,
    List<AnswerView> answers,
    List<LinkView> faults,
    List<String> sources) {

  /** An answer, and the causes that it speaks for. */
  public record AnswerView(String text, List<LinkView> speaksFor) {}

  static CheckView of(Base base, Check check) {
    List<AnswerView> answers = new ArrayList<>();
    for (Check.Answer answer : check.answers()) {
      List<LinkView> speaksFor = new ArrayList<>();
      for (Fault fault : base.faults()) {
        Map<String, Chance> given = fault.toldApartBy().getOrDefault(check.id(), Map.of());
        Chance chance = given.get(answer.id());
        if (chance != null && chance.value() > answer.otherwise().value()) {
          speaksFor.add(FaultView.link(fault, chance.word().replace('-', ' ')));
        }
      }
      answers.add(new AnswerView(answer.text(), speaksFor));
    }
    return new CheckView(
        check.id(),
        check.title(),
        check.minutes(),
        check.risk().title(),
        FaultView.needs(base, check.needs()),
        check.cautions(),
        check.how(),
        answers,
        base.faults().stream()
            .filter(fault -> fault.toldApartBy().containsKey(check.id()))
            .map(fault -> FaultView.link(fault, ""))
            .toList(),
        check.sources().stream().map(Source::toString).toList());
  }
}
