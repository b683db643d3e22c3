package standstill.guide;

import java.util.Arrays;

/**
 * Shannon's measure of uncertainty, in bits, for the figures that stand behind a question.
 *
 * <p>It explains a question and doesn't choose it: an answer may tell much and change nothing of
 * what is done. Weights need not sum to 1.
 */
final class Entropy {
  private Entropy() {}

  /** −Σ p log2 p of the weights, scaled to sum 1; 0 when they are all 0. */
  static double bits(double... weights) {
    double sum = Arrays.stream(weights).sum();
    double bits = 0;
    for (double weight : weights) {
      if (weight > 0) {
        bits -= weight / sum * Math.log(weight / sum) / Math.log(2);
      }
    }
    return bits;
  }

  /**
   * What is expected to be learnt: the entropy of the sum of all parts, less the mean entropy of
   * the parts (Quinlan, Induction of Decision Trees, Machine Learning 1, 1986).
   *
   * @param parts for every reply, the weights of the hypotheses together with that reply
   */
  static double gain(double[]... parts) {
    double[] whole = new double[parts[0].length];
    for (double[] part : parts) {
      for (int i = 0; i < whole.length; i++) {
        whole[i] += part[i];
      }
    }
    double total = Arrays.stream(whole).sum();
    double after = 0;
    for (double[] part : parts) {
      after += Arrays.stream(part).sum() / total * bits(part);
    }
    return bits(whole) - after;
  }
}
