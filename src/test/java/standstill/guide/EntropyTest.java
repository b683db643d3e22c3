package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class EntropyTest {
  // The fourteen days of Quinlan, Induction of Decision Trees, Machine Learning 1, 1986, table 1;
  // gains as printed in Mitchell, Machine Learning, 1997, section 3.4 (which cuts the third figure
  // off) and Witten and Frank, Data Mining, section 4.3. Play yes, play no.

  @Test
  void weatherDataHaveTheirEntropy() {
    assertEquals(0.940, Entropy.bits(9, 5), 0.001);
    assertEquals(0.940286, Entropy.bits(9, 5), 1e-6);
  }

  @Test
  void weatherDataHaveTheirGains() {
    double outlook = Entropy.gain(new double[] {2, 3}, new double[] {4, 0}, new double[] {3, 2});
    double temperature =
        Entropy.gain(new double[] {2, 2}, new double[] {4, 2}, new double[] {3, 1});
    double humidity = Entropy.gain(new double[] {3, 4}, new double[] {6, 1});
    double wind = Entropy.gain(new double[] {6, 2}, new double[] {3, 3});
    assertEquals(0.247, outlook, 0.001);
    assertEquals(0.029, temperature, 0.001);
    assertEquals(0.152, humidity, 0.001);
    assertEquals(0.048, wind, 0.001);
    assertEquals(0.246750, outlook, 1e-6);
    assertEquals(0.029223, temperature, 1e-6);
    assertEquals(0.151836, humidity, 1e-6);
    assertEquals(0.048127, wind, 1e-6);
  }

  @Test
  void sunnyDaysHaveTheirGains() {
    // The branch "sunny" of the tree, Witten and Frank, section 4.3.
    assertEquals(0.971, Entropy.gain(new double[] {0, 3}, new double[] {2, 0}), 0.001);
    assertEquals(
        0.571, Entropy.gain(new double[] {0, 2}, new double[] {1, 1}, new double[] {1, 0}), 0.001);
    assertEquals(0.020, Entropy.gain(new double[] {1, 2}, new double[] {1, 1}), 0.001);
  }

  @Test
  void knownDistributionsHaveTheirEntropy() {
    // From the definition: Shannon, A Mathematical Theory of Communication, 1948.
    assertEquals(1, Entropy.bits(1, 1), 1e-12);
    assertEquals(2, Entropy.bits(1, 1, 1, 1), 1e-12);
    assertEquals(0.811278, Entropy.bits(1, 3), 1e-6);
    assertEquals(0.468996, Entropy.bits(1, 9), 1e-6);
    assertEquals(1.875, Entropy.bits(8, 4, 2, 1, 1), 1e-12);
    assertEquals(0, Entropy.bits(0, 0), 0);
  }
}
