package standstill.guide;

import java.util.HashMap;
import java.util.Map;

/**
 * The optimum of a small problem by dynamic programming over everything that can have been tried
 * and answered (Bellman, Dynamic Programming, 1957). Every action can be taken once.
 */
final class ExactPlan {
  private final Troubleshooting problem;
  private final Map<Integer, Double> known = new HashMap<>();

  ExactPlan(Troubleshooting problem) {
    this.problem = problem;
  }

  /** Expected cost of the best plan of all. */
  double cost(double[] belief) {
    return optimum(belief, 0);
  }

  /** A state is a number: for each action 0 when it was not taken, otherwise 1 + its outcome. */
  private double optimum(double[] belief, int state) {
    Double before = known.get(state);
    if (before != null) {
      return before;
    }
    double total = Troubleshooting.sum(belief);
    double best = total * problem.giveUp();
    int place = 1;
    for (int a = 0; a < problem.repairs(); a++) {
      if (state / place % 4 == 0) {
        best =
            Math.min(
                best, problem.cost(a) * total + optimum(problem.failed(belief, a), state + place));
      }
      place *= 4;
    }
    for (int q = 0; q < problem.questions(); q++) {
      if (state / place % 4 == 0) {
        double cost = problem.questionCost(q) * total;
        for (int r = 0; r < problem.replies(q); r++) {
          cost += optimum(problem.replied(belief, q, r), state + (1 + r) * place);
        }
        best = Math.min(best, cost);
      }
      place *= 4;
    }
    known.put(state, best);
    return best;
  }

  /** Expected cost of doing what the guide's rule says, again and again. */
  static double costOfRule(
      Troubleshooting problem, double[] belief, boolean[] used, boolean[] asked) {
    double total = Troubleshooting.sum(belief);
    if (total < 1e-12) {
      return 0;
    }
    Troubleshooting.Move move = problem.next(belief, used, asked);
    if (move instanceof Troubleshooting.Repair repair) {
      boolean[] then = used.clone();
      then[repair.repair()] = true;
      return problem.cost(repair.repair()) * total
          + costOfRule(problem, problem.failed(belief, repair.repair()), then, asked);
    }
    if (move instanceof Troubleshooting.Question question) {
      boolean[] then = asked.clone();
      then[question.question()] = true;
      double cost = problem.questionCost(question.question()) * total;
      for (int r = 0; r < problem.replies(question.question()); r++) {
        cost += costOfRule(problem, problem.replied(belief, question.question(), r), used, then);
      }
      return cost;
    }
    return total * problem.giveUp();
  }
}
