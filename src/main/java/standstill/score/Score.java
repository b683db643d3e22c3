package standstill.score;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Label;

/**
 * Measures over labelled logs.
 *
 * @param results one for each log
 */
public record Score(List<Result> results) {
  public Score {
    results = List.copyOf(results);
  }

  private List<Result> faults() {
    return results.stream().filter(r -> r.label().isFault()).toList();
  }

  private static double share(long some, int all) {
    return all == 0 ? 0 : some / (double) all;
  }

  /** Share of stalled boots whose first cause is right and whose verdict is {@code stalled}. */
  public double top1() {
    return share(
        faults().stream().filter(r -> r.rank() == 1 && r.verdict().equals("stalled")).count(),
        faults().size());
  }

  /** Share of stalled boots with a right cause among the first three. */
  public double top3() {
    return share(
        faults().stream().filter(r -> r.rank() >= 1 && r.rank() <= 3).count(), faults().size());
  }

  /** Mean reciprocal rank over stalled boots. */
  public double meanReciprocalRank() {
    return Metrics.meanReciprocalRank(faults().stream().map(Result::rank).toList());
  }

  /** Share of all logs whose stage is right. */
  public double stageAccuracy() {
    return share(results.stream().filter(Result::stageRight).count(), results.size());
  }

  /** Healthy boots that were not called {@code no-stall}. */
  public List<Result> falseAlarms() {
    return results.stream()
        .filter(r -> r.label().label().equals(Label.HEALTHY) && !r.verdict().equals("no-stall"))
        .toList();
  }

  /** Number of healthy boots. */
  public long healthy() {
    return results.stream().filter(r -> r.label().label().equals(Label.HEALTHY)).count();
  }

  /** Number of boots with a cause outside of the base. */
  public long unlisted() {
    return results.stream().filter(r -> r.label().isUnlisted()).count();
  }

  /**
   * Number of boots with a cause outside of the base that were called so, or given an accepted
   * general cause.
   */
  public long unlistedRight() {
    return results.stream().filter(r -> r.label().isUnlisted() && r.right()).count();
  }

  /** The results of one source. */
  public Score of(String source) {
    return new Score(results.stream().filter(r -> r.source().equals(source)).toList());
  }

  /** Share of the logs whose stop is labelled in which the likeliest stop is right. */
  public double stopAccuracy() {
    List<Boolean> known = results.stream().flatMap(r -> r.stopRight().stream()).toList();
    return share(known.stream().filter(right -> right).count(), known.size());
  }

  /** Number of answers that were given with at least that probability. */
  public long sure(double least) {
    return results.stream().filter(r -> r.topProbability() >= least).count();
  }

  /** Answers that were given with at least that probability and are wrong. */
  public List<Result> sureAndWrong(double least) {
    return results.stream().filter(r -> r.topProbability() >= least && !r.right()).toList();
  }

  /** The first hypothesis of each log as a forecast. */
  public List<Metrics.Forecast> forecasts() {
    List<Metrics.Forecast> forecasts = new ArrayList<>();
    results.forEach(r -> forecasts.add(new Metrics.Forecast(r.topProbability(), r.right())));
    return forecasts;
  }

  /** Logs whose first hypothesis is wrong. */
  public List<Result> misses() {
    return results.stream().filter(r -> !r.right()).toList();
  }
}
