package standstill.guide;

import java.util.List;
import java.util.stream.Stream;
import standstill.base.Check;
import standstill.base.Condition;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.rank.AnswerModel;
import standstill.rank.Observations;

/**
 * Which repairs of a cause fit, as far as answers tell: a repair that asks for an answer cures in
 * the cases in which the answer is given, and in no others. While the question is open its chance
 * is that of its word times the chance of the answer; so a look that chooses among the repairs of a
 * cause pays although it says nothing about the cause.
 */
record Fitting(AnswerModel answers, List<Fix> fixes, List<Fault> faults, Observations said) {
  /** A repair that an answer speaks against; people misread. */
  private static final double UNFIT = 0.05;

  /** Checks whose answers a fix asks for. */
  static Stream<String> checks(Fix fix) {
    return fix.scope().when().stream().filter(Condition::isAnswer).map(Condition::check);
  }

  /** P(it cures | its fault) for each repair, with what is not answered yet left open. */
  double[] cures() {
    double[] cures = new double[fixes.size()];
    for (int a = 0; a < cures.length; a++) {
      cures[a] = fixes.get(a).cures().value();
      for (Condition condition : fixes.get(a).scope().when()) {
        if (condition.isAnswer() && isOpen(condition)) {
          double holds = holds(condition, faults.get(a));
          cures[a] *= holds + (1 - holds) * UNFIT;
        }
      }
    }
    return cures;
  }

  private boolean isOpen(Condition condition) {
    return said.answers()
        .getOrDefault(condition.check(), Observations.UNKNOWN)
        .equals(Observations.UNKNOWN);
  }

  private double holds(Condition condition, Fault fault) {
    double chance = answers.chance(fault, condition.check(), condition.answer());
    return condition.there() ? chance : 1 - chance;
  }

  /** For each check and answer, by what it multiplies the chances of {@link #cures}. */
  double[][][] byReply(List<Check> checks) {
    double[][][] byReply = new double[checks.size()][0][];
    for (int q = 0; q < checks.size(); q++) {
      Check check = checks.get(q);
      if (fixes.stream().flatMap(Fitting::checks).anyMatch(check.id()::equals)) {
        double[][] told = new double[check.answers().size()][];
        for (int r = 0; r < told.length; r++) {
          told[r] = after(check.id(), check.answers().get(r).id());
        }
        byReply[q] = told;
      }
    }
    return byReply;
  }

  private double[] after(String check, String answer) {
    double[] factors = new double[fixes.size()];
    for (int a = 0; a < factors.length; a++) {
      factors[a] = 1;
      for (Condition condition : fixes.get(a).scope().when()) {
        if (condition.isAnswer() && condition.check().equals(check)) {
          double holds = holds(condition, faults.get(a));
          boolean fits = condition.answer().equals(answer) == condition.there();
          factors[a] *= (fits ? 1 : UNFIT) / (holds + (1 - holds) * UNFIT);
        }
      }
    }
    return factors;
  }
}
