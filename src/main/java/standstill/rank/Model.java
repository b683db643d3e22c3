package standstill.rank;

import java.util.List;
import standstill.base.Base;
import standstill.base.Rate;
import standstill.base.Scale;
import standstill.base.Sign;

/**
 * The numbers of the ranking, out of the base's scale: no other place has one.
 *
 * @param scale where they stand
 */
record Model(Scale scale) {
  /** What the scale must have; docs/explanation/ranking.md says what each is. */
  static final List<String> NAMES =
      List.of(
          "unlisted-share",
          "no-stall-share",
          "general-share",
          "unlisted-weight",
          "rivals-trust",
          "coarse-share",
          "stop-by-stage",
          "stop-elsewhere",
          "leads-to",
          "coarse-link",
          "faintest-link",
          "stage-miss",
          "least-stage-fit",
          "passed-by",
          "end-lines",
          "stop-unseen",
          "read-out",
          "ended-well",
          "trouble-last",
          "trouble-done",
          "temperature",
          "stop-temperature",
          "pull",
          "absence-floor",
          "least-absence",
          "absence-beside",
          "no-own-sign",
          "prior-boots",
          "rival-boots",
          "dependence",
          "left-over",
          "stepping-back",
          "decisive",
          "telling",
          "slips",
          "symptom-shown",
          "symptom-elsewhere",
          "stage-misnamed",
          "stage-unlisted");

  /** The number of that name. */
  double number(String name) {
    return scale.model(name);
  }

  /**
   * P(sign | a rival): the larger of its rate among boots that ended in the same stop for another
   * reason, and among all boots of other causes. Each is a Beta prior, worth some boots with the
   * word's chance as its mean, updated with the measured counts (Gelman et al., Bayesian Data
   * Analysis, 3rd ed., section 2.4).
   */
  double background(Base base, Sign sign) {
    double elsewhere = sign.elsewhere().value();
    // The word for rivals is the harder one to write, so it is trusted only so far.
    double rivals = elsewhere * Math.pow(sign.rivals().value() / elsewhere, number("rivals-trust"));
    Rate rate = base.rates().get(sign.id());
    if (rate != null) {
      elsewhere = betaMean(elsewhere, number("prior-boots"), rate.seen(), rate.boots());
      rivals = betaMean(rivals, number("rival-boots"), rate.rivalsSeen(), rate.rivals());
    }
    return Math.max(elsewhere, rivals);
  }

  /** Mean of Beta(a + seen, b + boots − seen), where a / (a + b) is the prior mean. */
  static double betaMean(double mean, double worth, int seen, int boots) {
    return (mean * worth + seen) / (worth + boots);
  }
}
