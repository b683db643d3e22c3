package standstill.score;

import java.util.List;
import java.util.Locale;

/** The reliability diagram: what was said, against how often it came true. */
public final class Reliability {
  private Reliability() {}

  /** As text, a row for each bin that has forecasts. */
  public static String text(List<Metrics.Forecast> forecasts) {
    StringBuilder out = new StringBuilder("   said     came true   logs\n");
    for (Metrics.Bin bin : Metrics.reliability(forecasts)) {
      if (bin.count() > 0) {
        out.append(
            String.format(
                Locale.ROOT,
                "   %3.0f %%      %3.0f %%      %4d  %s%n",
                bin.mean() * 100,
                bin.rate() * 100,
                bin.count(),
                "#".repeat((int) Math.round(bin.rate() * 30))));
      }
    }
    return out.toString();
  }

  /**
   * As a picture: a dot for each bin, as large as the bin is full, and the diagonal on which it
   * should lie.
   */
  public static String svg(List<Metrics.Forecast> forecasts) {
    StringBuilder out =
        new StringBuilder(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 260 260\" role=\"img\">"
                + "<title>Reliability: share that came true over probability that was said</title>\n"
                + "<rect x=\"40\" y=\"10\" width=\"200\" height=\"200\" fill=\"none\" stroke=\"#888\"/>\n"
                + "<path d=\"M40 210 L240 10\" stroke=\"#888\" stroke-dasharray=\"4 4\"/>\n");
    for (Metrics.Bin bin : Metrics.reliability(forecasts)) {
      if (bin.count() > 0) {
        out.append(
            String.format(
                Locale.ROOT,
                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"#7a4b12\"><title>%d logs: said %.2f, came true %.2f</title></circle>%n",
                40 + 200 * bin.mean(),
                210 - 200 * bin.rate(),
                2 + Math.sqrt(bin.count()),
                bin.count(),
                bin.mean(),
                bin.rate()));
      }
    }
    out.append(
        "<text x=\"140\" y=\"232\" text-anchor=\"middle\" font-size=\"12\">probability that was said</text>\n"
            + "<text x=\"40\" y=\"250\" font-size=\"11\">0</text><text x=\"234\" y=\"250\" font-size=\"11\">1</text>\n"
            + "<text x=\"20\" y=\"110\" font-size=\"12\" text-anchor=\"middle\" transform=\"rotate(-90 20 110)\">came true</text>\n"
            + "</svg>\n");
    return out.toString();
  }
}
