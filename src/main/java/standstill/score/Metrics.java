package standstill.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Measures of rankings and of probabilities, as published. */
public final class Metrics {
  private Metrics() {}

  /** Mean of 1/rank; rank 0 stands for "not found" and counts 0 (Voorhees, TREC-8). */
  public static double meanReciprocalRank(List<Integer> ranks) {
    return ranks.stream().mapToDouble(r -> r == 0 ? 0 : 1.0 / r).average().orElse(0);
  }

  /** Mean over the relevant documents of the precision at each (Croft et al., section 8.4). */
  public static double averagePrecision(List<Integer> relevantRanks, int relevant) {
    double sum = 0;
    int found = 0;
    for (int rank : relevantRanks.stream().sorted().toList()) {
      found++;
      sum += (double) found / rank;
    }
    return relevant == 0 ? 0 : sum / relevant;
  }

  /** Discounted cumulative gain, gain / log2(rank + 1), over the first {@code depth} gains. */
  public static double dcg(List<Double> gains, int depth) {
    double sum = 0;
    for (int i = 0; i < Math.min(depth, gains.size()); i++) {
      sum += gains.get(i) * Math.log(2) / Math.log(i + 2);
    }
    return sum;
  }

  /** DCG over that of the ideal order of all judged gains. */
  public static double ndcg(List<Double> gains, List<Double> judged, int depth) {
    List<Double> ideal = new ArrayList<>(judged);
    ideal.sort(Comparator.reverseOrder());
    double best = dcg(ideal, depth);
    return best == 0 ? 0 : dcg(gains, depth) / best;
  }

  /**
   * A probability that was stated, and whether the thing came true.
   *
   * @param probability between 0 and 1
   * @param happened whether it came true
   */
  public record Forecast(double probability, boolean happened) {}

  /** Mean squared difference of forecast and outcome (Brier 1950). */
  public static double brier(List<Forecast> forecasts) {
    return forecasts.stream()
        .mapToDouble(f -> Math.pow(f.probability() - (f.happened() ? 1 : 0), 2))
        .average()
        .orElse(0);
  }

  /** Mean of −ln P(what happened), in nats; probabilities are held 1e-9 away from 0 and 1. */
  public static double logLoss(List<Forecast> forecasts) {
    return forecasts.stream()
        .mapToDouble(
            f -> -Math.log(Math.max(1e-9, f.happened() ? f.probability() : 1 - f.probability())))
        .average()
        .orElse(0);
  }

  /**
   * A bin of a reliability diagram.
   *
   * @param from lower edge
   * @param to upper edge
   * @param count forecasts in it
   * @param mean mean forecast
   * @param rate share that came true
   */
  public record Bin(double from, double to, int count, double mean, double rate) {}

  /** Ten bins of equal width; empty ones have count 0. */
  public static List<Bin> reliability(List<Forecast> forecasts) {
    List<Bin> bins = new ArrayList<>();
    for (int b = 0; b < 10; b++) {
      int bin = b;
      List<Forecast> inside =
          forecasts.stream()
              .filter(f -> Math.min(9, (int) Math.floor(f.probability() * 10 + 1e-9)) == bin)
              .toList();
      bins.add(
          new Bin(
              b / 10.0,
              (b + 1) / 10.0,
              inside.size(),
              inside.stream().mapToDouble(Forecast::probability).average().orElse(0),
              inside.stream().filter(Forecast::happened).count()
                  / (double) Math.max(1, inside.size())));
    }
    return bins;
  }

  /**
   * Expected calibration error: |mean − rate| of each bin, weighted by its count (Guo et al. 2017).
   */
  public static double calibrationError(List<Forecast> forecasts) {
    double sum = 0;
    for (Bin bin : reliability(forecasts)) {
      sum += bin.count() * Math.abs(bin.mean() - bin.rate());
    }
    return forecasts.isEmpty() ? 0 : sum / forecasts.size();
  }
}
