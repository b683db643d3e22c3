package standstill.rank;

import java.util.List;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Rate;
import standstill.base.Scale;
import standstill.base.Sign;

/**
 * The numbers of the ranking, out of the base's scale.
 *
 * @param unlistedShare prior probability of a cause that is not in the base
 * @param noStallShare prior probability that nothing stalled
 * @param leadsTo chance that a consequence shows itself
 * @param stageMiss factor for each stage between a fault's stages and the one where progress ended
 * @param passedBy exponent on a sign's weight for each stage that the boot went on after it
 * @param temperature exponent on all evidence: below 1 where the probabilities came out bolder than
 *     the truth, above 1 where they came out more timid
 * @param absenceFloor the least factor of one absent event
 * @param noOwnSign factor for a fault of which only consequences were seen
 * @param priorBoots how many boots a word of the scale is worth against measured ones
 * @param dependence how far a sign is expected once a commoner one of the same story is there: 0
 *     not at all, 1 whenever it is
 * @param leftOver factor for each sort of trouble near the stop that a fault doesn't account for
 */
record Model(
    double unlistedShare,
    double noStallShare,
    double leadsTo,
    double stageMiss,
    double passedBy,
    double temperature,
    double absenceFloor,
    double noOwnSign,
    double priorBoots,
    double dependence,
    double leftOver) {

  static final List<String> NAMES =
      List.of(
          "unlisted-share",
          "no-stall-share",
          "leads-to",
          "stage-miss",
          "passed-by",
          "temperature",
          "absence-floor",
          "no-own-sign",
          "prior-boots",
          "dependence",
          "left-over");

  static Model of(Scale scale) {
    return new Model(
        scale.model("unlisted-share"),
        scale.model("no-stall-share"),
        scale.model("leads-to"),
        scale.model("stage-miss"),
        scale.model("passed-by"),
        scale.model("temperature"),
        scale.model("absence-floor"),
        scale.model("no-own-sign"),
        scale.model("prior-boots"),
        scale.model("dependence"),
        scale.model("left-over"));
  }

  /**
   * P(sign | another cause, or none): a Beta prior worth {@code priorBoots} boots with the word's
   * chance as its mean, updated with the measured counts (Gelman et al., Bayesian Data Analysis,
   * 3rd ed., section 2.4).
   */
  double background(Base base, Sign sign) {
    Chance word = sign.elsewhere();
    Rate rate = base.rates().get(sign.id());
    return rate == null
        ? word.value()
        : betaMean(
            word.value() * priorBoots, (1 - word.value()) * priorBoots, rate.seen(), rate.boots());
  }

  /** Mean of Beta(a + seen, b + boots − seen). */
  static double betaMean(double a, double b, int seen, int boots) {
    return (a + seen) / (a + b + boots);
  }
}
