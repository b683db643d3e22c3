package standstill.rank;

import standstill.base.Sign;
import standstill.base.SignForm;

/** A sign in words, where no line of the log shows it. */
final class Wording {
  private Wording() {}

  /** What would have been there: a text that shows the sign, never a pattern. */
  static String of(Sign sign) {
    if (sign.form() instanceof SignForm.OnLine && !sign.seen().isEmpty()) {
      return "a line such as “" + sign.seen().get(0).strip() + "”";
    }
    return sign.form().describe();
  }
}
