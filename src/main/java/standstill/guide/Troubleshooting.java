package standstill.guide;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * A troubleshooting problem in numbers: one of several faults is present, each repair may cure one
 * of them, questions tell them apart. The last fault may be one that nothing cures: a cause that is
 * not in the base.
 *
 * <p>A reply may also tell which repairs of a fault fit: their chances of a cure then change with
 * it.
 *
 * <p>Kept apart from the records of the base so that the arithmetic can be tested against published
 * examples and against exact optima. Beliefs need not sum to 1; results then scale alike, which
 * spares a division at every leaf.
 */
final class Troubleshooting {
  /** Repairs and questions together, up to which a problem is looked at whole. */
  static final int SMALL = 10;

  static final int DEEP = 3;

  /** No repair is surer than this. */
  private static final double MOST_CURE = 0.99;

  /** Questions that are followed two steps in a large problem. */
  static final int WIDE = 8;

  private final int[] cured;
  private final Cures cures;
  private final double[] cost;
  private final double[][][] answer;
  private final double[] questionCost;
  private final double giveUp;
  private final double[][][] fits;
  private final int faults;

  /**
   * Chances of a cure, as far as is known.
   *
   * @param cure for each repair, P(it cures | its fault)
   * @param chains for each fault its repairs, best cure over cost first
   */
  private record Cures(double[] cure, int[][] chains) {}

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
    this(cured, cure, cost, answer, questionCost, giveUp, new double[answer.length][0][]);
  }

  /**
   * A problem in which replies tell which repairs fit.
   *
   * @param fits {@code fits[q][r][a]}: by what reply r to question q multiplies P(repair a cures |
   *     its fault); {@code fits[q]} is empty where the question tells nothing of it
   */
  Troubleshooting(
      int[] cured,
      double[] cure,
      double[] cost,
      double[][][] answer,
      double[] questionCost,
      double giveUp,
      double[][][] fits) {
    this.cured = cured.clone();
    this.cost = cost.clone();
    this.answer = answer.clone();
    this.questionCost = questionCost.clone();
    this.giveUp = giveUp;
    this.fits = fits.clone();
    this.faults = Arrays.stream(cured).max().orElse(-1) + 1;
    this.cures = cures(cure.clone());
  }

  private Cures cures(double[] cure) {
    int[][] chains = new int[faults][];
    for (int f = 0; f < faults; f++) {
      int fault = f;
      chains[f] =
          IntStream.range(0, cured.length)
              .filter(a -> cured[a] == fault)
              .boxed()
              .sorted(Comparator.comparingDouble(a -> -cure[a] / cost[a]))
              .mapToInt(a -> a)
              .toArray();
    }
    return new Cures(cure, chains);
  }

  /** The chances of a cure after a reply. */
  private Cures after(Cures before, int question, int reply) {
    double[][] told = fits[question];
    if (told.length == 0) {
      return before;
    }
    double[] cure = before.cure().clone();
    for (int a = 0; a < cure.length; a++) {
      cure[a] = Math.min(MOST_CURE, cure[a] * told[reply][a]);
    }
    return cures(cure);
  }

  /** What to do next. */
  sealed interface Move {
    /** Expected minutes of the best plan found that begins so, times the belief's sum. */
    double expected();
  }

  /** Ask a question. */
  record Question(int question, double expected) implements Move {}

  /** Try a repair. */
  record Repair(int repair, double expected) implements Move {}

  /** Give up. */
  record Stop(double expected) implements Move {}

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
    return belief[cured[repair]] * cures.cure()[repair];
  }

  /** The belief after a repair that did not help. */
  double[] failed(double[] belief, int repair) {
    return failed(belief, repair, cures);
  }

  private double[] failed(double[] belief, int repair, Cures known) {
    double[] left = belief.clone();
    left[cured[repair]] *= 1 - known.cure()[repair];
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
   * The first repair of the best sequence; −1 when none is worth its cost.
   *
   * @param used repairs that are out of the question; the belief knows already of those that failed
   */
  int bestRepair(double[] belief, boolean[] used) {
    return sequence(belief, used, cures).first();
  }

  /**
   * Expected cost of the best sequence of repairs without any question, times the belief's sum:
   * every repair is paid for by those whose fault is still there, and giving up by those whose
   * fault is there in the end.
   */
  double costOfRepair(double[] belief, boolean[] used) {
    return sequence(belief, used, cures).expected();
  }

  /** A sequence of repairs: its first one, −1 when it is empty, and what it costs. */
  private record Sequence(int first, double expected) {}

  /**
   * The best sequence of repairs. For one fault and independent costs, descending probability over
   * cost is the optimal order (Kadane and Simon 1977; Heckerman, Breese and Rommelse,
   * Communications of the ACM 38(3), 1995); where to end it is found by looking at every end.
   */
  private Sequence sequence(double[] belief, boolean[] used, Cures known) {
    int[][] chains = known.chains();
    double[] cure = known.cure();
    double total = sum(belief);
    double[] chance = new double[cured.length];
    double least = total;
    for (int f = 0; f < chains.length; f++) {
      double left = belief[f];
      for (int a : chains[f]) {
        if (!used[a]) {
          chance[a] = left * cure[a];
          left -= chance[a];
          least -= chance[a];
        }
      }
    }
    // A repair that would not pay even when all others have failed never pays.
    int[] order = new int[cured.length];
    double[] ratios = new double[cured.length];
    int count = 0;
    for (int[] chain : chains) {
      for (int a : chain) {
        double ratio = chance[a] / cost[a];
        if (ratio > 0 && ratio * giveUp > least) {
          int at = count++;
          while (at > 0 && ratios[at - 1] < ratio) {
            ratios[at] = ratios[at - 1];
            order[at] = order[at - 1];
            at--;
          }
          ratios[at] = ratio;
          order[at] = a;
        }
      }
    }
    double best = total * giveUp;
    boolean any = false;
    double paid = 0;
    double left = total;
    for (int i = 0; i < count; i++) {
      paid += left * cost[order[i]];
      left -= chance[order[i]];
      if (paid + left * giveUp < best) {
        best = paid + left * giveUp;
        any = true;
      }
    }
    return new Sequence(any ? order[0] : -1, best);
  }

  /**
   * The next move by looking some steps ahead: a question, the first repair of the best sequence,
   * or the end. Behind the horizon only repairs follow.
   *
   * <p>With one step of look-ahead alone, a question that pays only together with a second one is
   * never asked, and a question that pays is asked before a quick repair that may spare it. Where
   * the problem is small, all moves are followed {@link #DEEP} steps; otherwise the {@link #WIDE}
   * questions that save most are followed two steps.
   *
   * @param used repairs that are out of the question
   * @param asked questions that are
   */
  Move next(double[] belief, boolean[] used, boolean[] asked) {
    boolean small = cured.length + answer.length <= SMALL;
    int[] questions = promising(belief, used, asked, small ? answer.length : WIDE);
    return ahead(belief, used.clone(), asked.clone(), questions, small ? DEEP : 2, cures);
  }

  /** The questions that save most for their cost, best first. */
  private int[] promising(double[] belief, boolean[] used, boolean[] asked, int most) {
    double now = costOfRepair(belief, used);
    double total = sum(belief);
    double[] net = new double[answer.length];
    for (int q = 0; q < answer.length; q++) {
      if (!asked[q]) {
        net[q] = now - questionCost[q] * total;
        for (int r = 0; r < answer[q].length; r++) {
          net[q] -= sequence(replied(belief, q, r), used, after(cures, q, r)).expected();
        }
      }
    }
    return IntStream.range(0, answer.length)
        .filter(q -> !asked[q])
        .boxed()
        .sorted(Comparator.comparingDouble(q -> -net[q]))
        .limit(most)
        .mapToInt(q -> q)
        .toArray();
  }

  private Move ahead(
      double[] belief, boolean[] used, boolean[] asked, int[] questions, int depth, Cures known) {
    Sequence repairs = sequence(belief, used, known);
    Move best =
        repairs.first() < 0
            ? new Stop(repairs.expected())
            : new Repair(repairs.first(), repairs.expected());
    if (depth == 0) {
      return best;
    }
    double total = sum(belief);
    if (repairs.first() >= 0 && depth > 1) {
      int a = repairs.first();
      used[a] = true;
      double expected =
          cost[a] * total
              + ahead(failed(belief, a, known), used, asked, questions, depth - 1, known)
                  .expected();
      used[a] = false;
      best = expected < best.expected() ? new Repair(a, expected) : best;
    }
    for (int q : questions) {
      if (!asked[q] && questionCost[q] * total < best.expected()) {
        asked[q] = true;
        double expected = questionCost[q] * total;
        for (int r = 0; r < answer[q].length && expected < best.expected(); r++) {
          expected +=
              ahead(replied(belief, q, r), used, asked, questions, depth - 1, after(known, q, r))
                  .expected();
        }
        asked[q] = false;
        best = expected < best.expected() - 1e-9 ? new Question(q, expected) : best;
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
      after += sequence(replied(belief, question, r), used, after(cures, question, r)).expected();
    }
    return costOfRepair(belief, used) - after;
  }

  static double sum(double[] belief) {
    return Arrays.stream(belief).sum();
  }
}
