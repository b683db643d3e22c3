package standstill.rank;

import java.util.List;
import standstill.base.Sign;
import standstill.base.SignForm;

/**
 * The end of a boot is in every paste, so a stop that shows nothing there is unlikely: a factor of
 * 1 − P(its commonest sign | the stop), never below {@code stop-unseen}.
 */
final class StopUnseen {
  static final String NAME = "stop-unseen";

  private final double floor;

  StopUnseen(Model model, Corrections corrections) {
    this.floor = corrections.on(NAME) ? model.number("stop-unseen") : 1;
  }

  /**
   * The factor.
   *
   * @param signs what the stop may show
   * @param seen whether it shows any of it
   */
  double factor(List<Sign> signs, boolean seen) {
    if (seen) {
      return 1;
    }
    double most =
        signs.stream()
            .filter(sign -> !(sign.form() instanceof SignForm.Without))
            .mapToDouble(sign -> sign.shows().value())
            .max()
            .orElse(0);
    return Math.max(floor, 1 - most);
  }
}
