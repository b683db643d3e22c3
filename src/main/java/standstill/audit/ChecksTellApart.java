package standstill.audit;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.rank.AnswerModel;
import standstill.text.Problem;

/** No check whose answers are as likely under every cause, so that asking it teaches nothing. */
final class ChecksTellApart implements Rule {
  /**
   * Largest difference of the chances of a set of answers (total variation distance) below which
   * two causes are taken to answer alike: the least that one word of the scale makes.
   */
  static final double LEAST = 0.1;

  @Override
  public String id() {
    return "check-tells-nothing";
  }

  @Override
  public String title() {
    return "Every check tells causes apart";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    AnswerModel answers = new AnswerModel(base);
    List<Problem> problems = new ArrayList<>();
    for (Check check : base.checks()) {
      List<Fault> named =
          base.faults().stream().filter(f -> f.toldApartBy().containsKey(check.id())).toList();
      boolean tells =
          named.stream()
              .anyMatch(
                  fault ->
                      check.answers().stream()
                              .mapToDouble(
                                  a ->
                                      Math.abs(
                                          answers.chance(fault, check.id(), a.id())
                                              - answers.chanceOtherwise(check.id(), a.id())))
                              .sum()
                          >= 2 * LEAST);
      if (!named.isEmpty() && !tells) {
        problems.add(
            Problem.error(
                check.where(),
                "check '" + check.id() + "' tells nothing apart",
                "its answers are as likely under "
                    + (named.size() == 1
                        ? "the one fault that names it"
                        : "all " + named.size() + " faults that name it")
                    + " as otherwise; give them other chances, or remove it"));
      }
    }
    return problems;
  }

  /** Half the sum of the differences in chance over a check's answers. */
  static double distance(Check check, AnswerModel answers, Fault one, Fault other) {
    return check.answers().stream()
            .mapToDouble(
                a ->
                    Math.abs(
                        answers.chance(one, check.id(), a.id())
                            - answers.chance(other, check.id(), a.id())))
            .sum()
        / 2;
  }
}
