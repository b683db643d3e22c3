package standstill.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ModelTest {
  @Test
  void measuredRatesFollowTheBetaBinomialOfTheTextbook() {
    // Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4: 437 of 980, uniform prior: mean
    // 0.446.
    assertEquals(0.446029, Model.betaMean(0.5, 2, 437, 980), 1e-6);
    // Laplace's rule: 0 of 10 is 1/12.
    assertEquals(1.0 / 12, Model.betaMean(0.5, 2, 0, 10), 1e-12);
    // Jeffreys' prior, 7 of 10.
    assertEquals(7.5 / 11, Model.betaMean(0.5, 1, 7, 10), 1e-12);
  }
}
