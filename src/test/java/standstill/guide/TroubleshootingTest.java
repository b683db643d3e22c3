package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class TroubleshootingTest {
  private static final double[] CHANCE = {0.40, 0.30, 0.20, 0.10};
  private static final double[] COST = {10, 2, 8, 60};

  /**
   * Cable, boot order, boot loader and dead disk; every repair cures its fault; "does the firmware
   * list the disk?" tells them apart. The order by probability over cost is that of Kadane and
   * Simon (1977) and Heckerman, Breese and Rommelse (CACM 38(3), 1995); the papers' own figures
   * were not at hand, so these were worked out over all 24 orders.
   */
  private static Troubleshooting fourFaults() {
    return new Troubleshooting(
        new int[] {0, 1, 2, 3},
        new double[] {1, 1, 1, 1},
        COST,
        new double[][][] {{{0.10, 0.90, 0.95, 0.05}, {0.90, 0.10, 0.05, 0.95}}},
        new double[] {1},
        1e6);
  }

  private static double costOf(int... order) {
    double left = 1;
    double cost = 0;
    for (int fault : order) {
      cost += left * COST[fault];
      left -= CHANCE[fault];
    }
    return cost;
  }

  @Test
  void repairsGoByProbabilityOverCost() {
    assertEquals(17.4, fourFaults().costOfRepair(CHANCE, new boolean[4]), 1e-9);
    assertEquals(17.4, costOf(1, 0, 2, 3), 1e-9);
    assertEquals(19.6, costOf(0, 1, 2, 3), 1e-9);
    assertEquals(74.8, costOf(3, 2, 0, 1), 1e-9);
    assertEquals(1, fourFaults().bestRepair(CHANCE, new boolean[4]));
  }

  @Test
  void costOfTheRepairItselfIsAConstant() {
    double constant = 0.40 * 5 + 0.30 * 1 + 0.20 * 15 + 0.10 * 100;
    assertEquals(15.3, constant, 1e-9);
    assertEquals(32.7, fourFaults().costOfRepair(CHANCE, new boolean[4]) + constant, 1e-9);
  }

  @Test
  void noOrderIsBetter() {
    double best = fourFaults().costOfRepair(CHANCE, new boolean[4]);
    double least = Double.MAX_VALUE;
    double most = 0;
    for (int a = 0; a < 4; a++) {
      for (int b = 0; b < 4; b++) {
        for (int c = 0; c < 4; c++) {
          if (a != b && a != c && b != c) {
            double cost = costOf(a, b, c, 6 - a - b - c);
            least = Math.min(least, cost);
            most = Math.max(most, cost);
          }
        }
      }
    }
    assertEquals(least, best, 1e-9);
    assertEquals(74.8, most, 1e-9);
  }

  @Test
  void questionIsWorthWhatItSaves() {
    Troubleshooting problem = fourFaults();
    double[] yes = problem.replied(CHANCE, 0, 0);
    double[] no = problem.replied(CHANCE, 0, 1);
    assertEquals(0.505, Arrays.stream(yes).sum(), 1e-12);
    assertArrayEquals(new double[] {0.079208, 0.534653, 0.376238, 0.009901}, scaled(yes), 1e-6);
    assertArrayEquals(new double[] {0.727273, 0.060606, 0.020202, 0.191919}, scaled(no), 1e-6);
    assertEquals(7.207921, problem.costOfRepair(scaled(yes), new boolean[4]), 1e-6);
    assertEquals(23.434343, problem.costOfRepair(scaled(no), new boolean[4]), 1e-6);
    assertEquals(2.16, problem.saving(CHANCE, new boolean[4], 0), 1e-9);
    assertEquals(1.846439, Entropy.bits(CHANCE), 1e-6);
    assertEquals(0.585712, Entropy.gain(yes, no), 1e-6);
  }

  private static double[] scaled(double[] weights) {
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(w -> w / sum).toArray();
  }

  private static Troubleshooting questions(double[][][] answers) {
    return new Troubleshooting(
        new int[0], new double[0], new double[0], answers, new double[answers.length], 1);
  }

  @Test
  void repliesMultiplyAsNaiveBayesDoes() {
    // A sunny, cool, humid and windy day: Mitchell, Machine Learning, 1997, section 6.9.1, prints
    // 0.0053, 0.0206 and 0.795. Hypotheses: play, don't play.
    Troubleshooting weather =
        questions(
            new double[][][] {
              {{2 / 9.0, 3 / 5.0}}, {{3 / 9.0, 1 / 5.0}}, {{3 / 9.0, 4 / 5.0}}, {{3 / 9.0, 3 / 5.0}}
            });
    double[] belief = {9 / 14.0, 5 / 14.0};
    for (int q = 0; q < 4; q++) {
      belief = weather.replied(belief, q, 0);
    }
    assertArrayEquals(new double[] {0.005291, 0.020571}, belief, 1e-6);
    assertEquals(0.795417, scaled(belief)[1], 1e-6);
    // One test: 1 % ill, sensitivity 0.80, false alarms 0.096 (Gigerenzer's and Eddy's example).
    double[] ill =
        questions(new double[][][] {{{0.80, 0.096}}}).replied(new double[] {0.01, 0.99}, 0, 0);
    assertEquals(0.0776, scaled(ill)[0], 0.0001);
  }

  @Test
  void burglaryNetworkHasItsPosteriors() {
    // Russell and Norvig, Artificial Intelligence: A Modern Approach, chapter 14; printed 0.284.
    // Hypotheses are the joint states of burglary, earthquake and alarm, given which the two calls
    // are independent.
    double[] belief = new double[8];
    double[] john = new double[8];
    double[] mary = new double[8];
    double[][] alarm = {{0.001, 0.29}, {0.94, 0.95}};
    for (int s = 0; s < 8; s++) {
      int b = s & 1;
      int e = s >> 1 & 1;
      int a = s >> 2;
      double rings = alarm[b][e];
      belief[s] =
          (b == 1 ? 0.001 : 0.999) * (e == 1 ? 0.002 : 0.998) * (a == 1 ? rings : 1 - rings);
      john[s] = a == 1 ? 0.90 : 0.05;
      mary[s] = a == 1 ? 0.70 : 0.01;
    }
    Troubleshooting network = questions(new double[][][] {{john}, {mary}});
    double[] both = network.replied(network.replied(belief, 0, 0), 1, 0);
    assertEquals(0.000628, both[4], 1e-6);
    assertEquals(0.284172, share(both, s -> (s & 1) == 1), 1e-6);
    assertEquals(0.016284, share(network.replied(belief, 0, 0), s -> (s & 1) == 1), 1e-6);
  }

  @Test
  void chestClinicHasItsPosteriors() {
    // Lauritzen and Spiegelhalter, Journal of the Royal Statistical Society B 50, 1988; for a
    // patient from Asia with dyspnoea they print .088, .10 and .81. Hypotheses are the joint states
    // of tuberculosis, cancer, bronchitis and smoking.
    double[] belief = new double[16];
    double[] dyspnoea = new double[16];
    double[] xray = new double[16];
    double[] smokes = new double[16];
    for (int s = 0; s < 16; s++) {
      int tub = s & 1;
      int lung = s >> 1 & 1;
      int bronc = s >> 2 & 1;
      int smoke = s >> 3;
      boolean either = tub + lung > 0;
      belief[s] =
          0.5
              * (tub == 1 ? 0.05 : 0.95)
              * of(lung, smoke == 1 ? 0.10 : 0.01)
              * of(bronc, smoke == 1 ? 0.60 : 0.30);
      dyspnoea[s] = bronc == 1 ? (either ? 0.9 : 0.8) : either ? 0.7 : 0.1;
      xray[s] = either ? 0.98 : 0.05;
      smokes[s] = smoke;
    }
    Troubleshooting clinic =
        questions(new double[][][] {{dyspnoea}, {xray, others(xray)}, {smokes, others(smokes)}});
    double[] short1 = clinic.replied(belief, 0, 0);
    assertEquals(0.087751, share(short1, s -> (s & 1) == 1), 1e-6);
    assertEquals(0.099525, share(short1, s -> (s >> 1 & 1) == 1), 1e-6);
    assertEquals(0.811402, share(short1, s -> (s >> 2 & 1) == 1), 1e-6);
    double[] seen = clinic.replied(short1, 1, 0);
    assertEquals(0.391712, share(seen, s -> (s & 1) == 1), 1e-6);
    assertEquals(0.444271, share(seen, s -> (s >> 1 & 1) == 1), 1e-6);
    // Which look tells more about cancer: the picture, not the question about smoking.
    assertEquals(0.229905, gainOnCancer(clinic, short1, 1), 1e-6);
    assertEquals(0.034653, gainOnCancer(clinic, short1, 2), 1e-6);
  }

  private static double of(int state, double chance) {
    return state == 1 ? chance : 1 - chance;
  }

  private static double[] others(double[] chances) {
    return Arrays.stream(chances).map(c -> 1 - c).toArray();
  }

  private static double gainOnCancer(Troubleshooting clinic, double[] belief, int question) {
    double[][] parts = new double[2][2];
    for (int r = 0; r < 2; r++) {
      double[] after = clinic.replied(belief, question, r);
      for (int s = 0; s < after.length; s++) {
        parts[r][s >> 1 & 1] += after[s];
      }
    }
    return Entropy.gain(parts);
  }

  private static double share(double[] belief, java.util.function.IntPredicate states) {
    double some = 0;
    for (int s = 0; s < belief.length; s++) {
      some += states.test(s) ? belief[s] : 0;
    }
    return some / Arrays.stream(belief).sum();
  }
}
