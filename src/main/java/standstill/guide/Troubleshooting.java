package standstill.guide;

import java.util.Arrays;

/**
 * A troubleshooting problem in numbers: one of several faults is present, each repair may cure one
 * of them, questions tell them apart. The last fault may be one that nothing cures: a cause that is
 * not in the base.
 *
 * <p>Kept apart from the records of the base so that the arithmetic can be tested against published
 * examples and against exact optima. Beliefs need not sum to 1; results then scale alike, which
 * spares a division at every leaf.
 */
final class Troubleshooting {
  private final int[] cured;
  private final double[] cure;
  private final double[] cost;
  private final double[][][] answer;
  private final double[] questionCost;
  private final double giveUp;

  /**
   * A problem.
   *
   * @param cured for each repair, the fault that it may cure
   * @param cure for each repair, P(it cures | that fault)
   * @param cost for each repair, its minutes, over 0
   * @param answer {@code answer[q][r][f]}: P(reply r to question q | fault f), which sums to 1 over
   *     r
   * @param questionCost for each question, its minutes
   * @param giveUp minutes that are charged when the fault is not cured in the end
   */
  Troubleshooting(
      int[] cured,
      double[] cure,
      double[] cost,
      double[][][] answer,
      double[] questionCost,
      double giveUp) {
    this.cured = cured.clone();
    this.cure = cure.clone();
    this.cost = cost.clone();
    this.answer = answer.clone();
    this.questionCost = questionCost.clone();
    this.giveUp = giveUp;
  }

  int repairs() {
    return cured.length;
  }

  int questions() {
    return answer.length;
  }

  int replies(int question) {
    return answer[question].length;
  }

  double cost(int repair) {
    return cost[repair];
  }

  double questionCost(int question) {
    return questionCost[question];
  }

  double giveUp() {
    return giveUp;
  }

  /** P(the repair cures), times the belief's sum. */
  double chance(double[] belief, int repair) {
    return belief[cured[repair]] * cure[repair];
  }

  /** The belief after a repair that did not help. */
  double[] failed(double[] belief, int repair) {
    double[] left = belief.clone();
    left[cured[repair]] *= 1 - cure[repair];
    return left;
  }

  /** The belief after a reply, times the chance of the reply. */
  double[] replied(double[] belief, int question, int reply) {
    double[] left = new double[belief.length];
    for (int f = 0; f < left.length; f++) {
      left[f] = belief[f] * answer[question][reply][f];
    }
    return left;
  }

  /**
   * The repair with the highest probability of cure over cost; −1 when none is worth its cost.
   *
   * <p>For one fault and independent costs, descending probability over cost is the optimal order
   * (Kadane and Simon 1977; Heckerman, Breese and Rommelse, Communications of the ACM 38(3), 1995).
   *
   * @param used repairs that were tried
   */
  int bestRepair(double[] belief, boolean[] used) {
    int best = -1;
    double bestRatio = 0;
    for (int a = 0; a < cured.length; a++) {
      if (!used[a]) {
        double ratio = chance(belief, a) / cost[a];
        if (ratio > bestRatio) {
          bestRatio = ratio;
          best = a;
        }
      }
    }
    return best >= 0 && bestRatio * giveUp > sum(belief) ? best : -1;
  }

  /**
   * Expected cost of the best sequence of repairs without any question, times the belief's sum:
   * every repair is paid for by those whose fault is still there, and giving up by those whose
   * fault is there in the end.
   */
  double costOfRepair(double[] belief, boolean[] used) {
    double[] left = belief.clone();
    boolean[] done = used.clone();
    double total = sum(left);
    double expected = 0;
    while (true) {
      int next = bestRepair(left, done);
      if (next < 0) {
        return expected + total * giveUp;
      }
      expected += total * cost[next];
      double gain = chance(left, next);
      left[cured[next]] -= gain;
      total -= gain;
      done[next] = true;
    }
  }

  /**
   * Expected cost of the best plan that may ask up to {@code depth} questions before each has paid
   * for itself, times the belief's sum. Depth 0 is {@link #costOfRepair}.
   */
  double costWithQuestions(double[] belief, boolean[] used, boolean[] asked, int depth) {
    double best = costOfRepair(belief, used);
    if (depth == 0) {
      return best;
    }
    double total = sum(belief);
    for (int q = 0; q < answer.length; q++) {
      if (!asked[q] && questionCost[q] * total < best) {
        asked[q] = true;
        double cost = questionCost[q] * total;
        for (int r = 0; r < answer[q].length && cost < best; r++) {
          cost += costWithQuestions(replied(belief, q, r), used, asked, depth - 1);
        }
        asked[q] = false;
        best = Math.min(best, cost);
      }
    }
    return best;
  }

  /**
   * Expected saving of a question in minutes, before its own cost: cost of repair now, less that
   * after the reply.
   *
   * @param belief sums to 1
   */
  double saving(double[] belief, boolean[] used, int question) {
    double after = 0;
    for (int r = 0; r < answer[question].length; r++) {
      after += costOfRepair(replied(belief, question, r), used);
    }
    return costOfRepair(belief, used) - after;
  }

  static double sum(double[] belief) {
    return Arrays.stream(belief).sum();
  }
}
