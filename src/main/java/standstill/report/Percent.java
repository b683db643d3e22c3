package standstill.report;

/** Probabilities as people read them. */
public final class Percent {
  private Percent() {}

  /** Whole percents, and never 0 or 100: nothing here is that certain. */
  public static String of(double probability) {
    if (probability < 0.01) {
      return "below 1 %";
    }
    return probability > 0.99 ? "over 99 %" : Math.round(probability * 100) + " %";
  }
}
