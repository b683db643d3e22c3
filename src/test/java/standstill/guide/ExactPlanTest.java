package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The rule of the guide against the exact optimum; the problems are invented. */
class ExactPlanTest {
  private static final int PROBLEMS = 300;

  /** Up to 6 faults, the last of which nothing may cure, and up to 8 repairs and questions. */
  private record Small(Troubleshooting problem, double[] belief) {
    static Small of(Random random) {
      int faults = 2 + random.nextInt(5);
      int questions = 1 + random.nextInt(3);
      boolean incurable = random.nextBoolean();
      int repairs = Math.min(8 - questions, faults + random.nextInt(3) - (incurable ? 1 : 0));
      int[] cured = new int[repairs];
      double[] cure = new double[repairs];
      double[] cost = new double[repairs];
      for (int a = 0; a < repairs; a++) {
        cured[a] = a % (incurable ? faults - 1 : faults);
        cure[a] = 0.3 + 0.7 * random.nextDouble();
        cost[a] = 2 + 60 * Math.pow(random.nextDouble(), 2);
      }
      double[][][] answers = new double[questions][][];
      double[] questionCost = new double[questions];
      for (int q = 0; q < questions; q++) {
        int replies = 2 + random.nextInt(2);
        answers[q] = new double[replies][faults];
        questionCost[q] = 1 + 9 * random.nextDouble();
        for (int f = 0; f < faults; f++) {
          double sum = 0;
          for (int r = 0; r < replies; r++) {
            answers[q][r][f] = Math.pow(random.nextDouble(), 3) + 0.02;
            sum += answers[q][r][f];
          }
          for (int r = 0; r < replies; r++) {
            answers[q][r][f] /= sum;
          }
        }
      }
      double[] belief = new double[faults];
      Arrays.setAll(belief, f -> Math.pow(random.nextDouble(), 2) + 0.01);
      double sum = Arrays.stream(belief).sum();
      Arrays.setAll(belief, f -> belief[f] / sum);
      return new Small(new Troubleshooting(cured, cure, cost, answers, questionCost, 240), belief);
    }
  }

  @Test
  void ruleCostsAtMostFivePercentMoreThanTheOptimum() {
    double rule = 0;
    double optimum = 0;
    double ratios = 0;
    double worst = 1;
    int worstSeed = 0;
    for (int seed = 0; seed < PROBLEMS; seed++) {
      Small small = Small.of(new Random(seed));
      double exact = new ExactPlan(small.problem()).cost(small.belief());
      double ours =
          ExactPlan.costOfRule(
              small.problem(),
              small.belief(),
              new boolean[small.problem().repairs()],
              new boolean[small.problem().questions()]);
      assertTrue(ours >= exact - 1e-9, "seed " + seed + ": " + ours + " is below " + exact);
      rule += ours;
      optimum += exact;
      ratios += ours / exact;
      if (ours / exact > worst) {
        worst = ours / exact;
        worstSeed = seed;
      }
    }
    String measured =
        "mean cost over optimum "
            + rule / optimum
            + ", mean of ratios "
            + ratios / PROBLEMS
            + ", worst "
            + worst
            + " (seed "
            + worstSeed
            + ")";
    if (Boolean.getBoolean("standstill.measure")) {
      System.out.println(measured);
    }
    assertTrue(rule / optimum <= 1.05 && ratios / PROBLEMS <= 1.05, measured);
  }
}
