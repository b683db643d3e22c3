package standstill.score;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Fits the numbers of the ranking on labelled boots: one number after the other is moved up and
 * down a grid, and what lessens the loss stays, until nothing does. The loss is the mean over
 * sources of −ln P(what is right), held away from 0, with a charge for each alarm on a healthy
 * boot. Background rates are cross-validated inside, so that the numbers are not fitted to rates
 * that have seen the answer.
 */
public final class ModelFit {
  /** The numbers that are fitted, with the values that are tried. */
  private static final Map<String, double[]> GRID = new LinkedHashMap<>();

  static {
    GRID.put("temperature", new double[] {0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.15, 1.3, 1.5});
    GRID.put("stop-temperature", new double[] {0.4, 0.6, 0.8, 1, 1.2});
    GRID.put("rivals-trust", new double[] {0, 0.25, 0.5, 0.75, 1});
    GRID.put("unlisted-weight", new double[] {0.25, 0.5, 0.75, 1, 1.5});
    GRID.put("pull", new double[] {0, 0.15, 0.3, 0.5, 0.7, 1});
    GRID.put("passed-by", new double[] {0.1, 0.2, 0.35, 0.5, 0.7});
    GRID.put("end-lines", new double[] {15, 30, 60, 120, 300, 1000});
    GRID.put("stop-unseen", new double[] {0.02, 0.05, 0.1, 0.2});
    GRID.put("read-out", new double[] {5, 10, 20, 50});
    GRID.put("ended-well", new double[] {1, 2, 4, 8});
    GRID.put("trouble-last", new double[] {0.03, 0.1, 0.3, 1});
    GRID.put("trouble-done", new double[] {0.03, 0.1, 0.2, 0.4, 1});
    GRID.put("coarse-share", new double[] {0.15, 0.25, 0.4, 0.7, 1});
    GRID.put("stop-by-stage", new double[] {0.01, 0.03, 0.06, 0.1, 0.2});
    GRID.put("stop-elsewhere", new double[] {0.0003, 0.001, 0.003, 0.01});
    GRID.put("dependence", new double[] {0, 0.15, 0.3, 0.5, 0.7, 0.9});
    GRID.put("left-over", new double[] {0.3, 0.45, 0.6, 0.8, 1});
    GRID.put("no-own-sign", new double[] {0.01, 0.02, 0.05, 0.1, 0.3, 1});
    GRID.put("leads-to", new double[] {0.3, 0.4, 0.5, 0.7});
    GRID.put("stepping-back", new double[] {0.05, 0.15, 0.3, 0.6, 1});
    GRID.put("absence-floor", new double[] {0.1, 0.25, 0.5, 0.75, 1});
    GRID.put("absence-beside", new double[] {0.1, 0.3, 0.5, 1});
    GRID.put("prior-boots", new double[] {15, 40, 100});
    GRID.put("rival-boots", new double[] {2, 4, 8, 16, 40});
    GRID.put("stage-miss", new double[] {0.03, 0.1, 0.2, 0.4});
  }

  private static final int MOST_ROUNDS = 3;
  private static final double LEAST_GAIN = 1e-4;
  private static final double LEAST_CHANCE = 0.01;
  private static final double ALARM = 0.5;

  private final Scorer scorer;
  private final Map<String, Double> start;

  /**
   * A fit.
   *
   * @param start the numbers to begin with
   */
  public ModelFit(Scorer scorer, Map<String, Double> start) {
    this.scorer = scorer;
    this.start = Map.copyOf(start);
  }

  /** The numbers fitted on all sources but one. */
  public Map<String, Double> without(String source) {
    List<String> used = new ArrayList<>(scorer.sources());
    used.remove(source);
    return fit(used);
  }

  /** The numbers fitted on all sources. */
  public Map<String, Double> onAll() {
    return fit(scorer.sources());
  }

  private Map<String, Double> fit(List<String> sources) {
    Map<String, Double> best = new LinkedHashMap<>();
    GRID.keySet().forEach(name -> best.put(name, start.getOrDefault(name, 0.0)));
    Function<Map<String, Double>, Double> loss = model -> loss(scorer.score(model), sources);
    double least = loss.apply(best);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double before = least;
      for (Map.Entry<String, double[]> each : GRID.entrySet()) {
        for (double value : each.getValue()) {
          Map<String, Double> tried = new LinkedHashMap<>(best);
          tried.put(each.getKey(), value);
          double now = loss.apply(tried);
          if (now < least - LEAST_GAIN) {
            least = now;
            best.put(each.getKey(), value);
          }
        }
      }
      if (before - least < LEAST_GAIN) {
        break;
      }
    }
    return best;
  }

  private static double loss(Score score, List<String> sources) {
    double sum = 0;
    for (String source : sources) {
      Score of = score.of(source);
      double each =
          of.results().stream()
              .mapToDouble(r -> -Math.log(Math.max(LEAST_CHANCE, r.probabilityOfRight())))
              .average()
              .orElse(0);
      sum += each + ALARM * of.falseAlarms().size() / Math.max(1, of.results().size());
    }
    return sum / sources.size();
  }
}
