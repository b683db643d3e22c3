package standstill.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MetricsTest {
  @Test
  void reciprocalRanksHaveTheirMean() {
    // The usual example of the measure of Voorhees, TREC-8, 1999: ranks 3, 2 and 1.
    assertEquals(0.611111, Metrics.meanReciprocalRank(List.of(3, 2, 1)), 1e-6);
    assertEquals(0.5, Metrics.meanReciprocalRank(List.of(1, 0)), 1e-12);
  }

  @Test
  void averagePrecisionIsThatOfTheTextbook() {
    // Croft, Metzler and Strohman, Search Engines, section 8.4, prints 0.78, 0.52, 0.62 and 0.44.
    assertEquals(0.775, Metrics.averagePrecision(List.of(1, 3, 4, 5, 6, 10), 6), 1e-6);
    assertEquals(0.521164, Metrics.averagePrecision(List.of(2, 5, 6, 7, 9, 10), 6), 1e-6);
    double first = Metrics.averagePrecision(List.of(1, 3, 6, 9, 10), 5);
    double second = Metrics.averagePrecision(List.of(2, 5, 7), 3);
    assertEquals(0.622222, first, 1e-6);
    assertEquals(0.442857, second, 1e-6);
    assertEquals(0.532540, (first + second) / 2, 1e-6);
  }

  @Test
  void discountedGainIsThatOfTheFormula() {
    // Gain over log2(rank + 1), worked out by hand for the gains 3 2 3 0 1 2. Järvelin and
    // Kekäläinen (TOIS 20, 2002) leave ranks below their base undiscounted; that variant isn't
    // used.
    List<Double> gains = List.of(3.0, 2.0, 3.0, 0.0, 1.0, 2.0);
    assertEquals(6.861127, Metrics.dcg(gains, 6), 1e-6);
    assertEquals(0.960808, Metrics.ndcg(gains, gains, 6), 1e-6);
  }

  @Test
  void oneForecastHasItsBrierScore() {
    // Brier, Monthly Weather Review 78, 1950: the squared difference.
    assertEquals(0.09, Metrics.brier(List.of(new Metrics.Forecast(0.7, true))), 1e-12);
    assertEquals(0.49, Metrics.brier(List.of(new Metrics.Forecast(0.3, true))), 1e-12);
    assertEquals(0.25, Metrics.brier(List.of(new Metrics.Forecast(0.5, false))), 1e-12);
    assertEquals(1, Metrics.brier(List.of(new Metrics.Forecast(1, false))), 1e-12);
  }

  @Test
  void twentyForecastsHaveTheirCalibration() {
    // Five at 0.9 (4 come true), five at 0.6 (3), ten at 0.2 (2). Murphy's parts (Journal of
    // Applied Meteorology 12, 1973): 0.0025 − 0.0675 + 0.2475; calibration error after Guo et al.,
    // ICML 2017.
    List<Metrics.Forecast> forecasts = new ArrayList<>();
    add(forecasts, 0.9, 5, 4);
    add(forecasts, 0.6, 5, 3);
    add(forecasts, 0.2, 10, 2);
    assertEquals(0.0025 - 0.0675 + 0.2475, Metrics.brier(forecasts), 1e-9);
    assertEquals(0.1825, Metrics.brier(forecasts), 1e-9);
    assertEquals(0.025, Metrics.calibrationError(forecasts), 1e-9);
    assertEquals(0.554655, Metrics.logLoss(forecasts), 1e-6);
  }

  private static void add(List<Metrics.Forecast> forecasts, double said, int count, int cameTrue) {
    for (int i = 0; i < count; i++) {
      forecasts.add(new Metrics.Forecast(said, i < cameTrue));
    }
  }
}
