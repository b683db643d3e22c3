package standstill.guide;

import java.util.List;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Walk;

/** What to do next. */
public sealed interface Step {

  /** Look at something and answer. */
  record Ask(Check check, Why why) implements Step {}

  /** Get the boot's text, because it would tell more than the next question. */
  record GetLog(Why why) implements Step {}

  /** Repair something and see whether it helped. */
  record Repair(Fault fault, Fix fix, double chance, Why why) implements Step {}

  /** Go through a walk that was written by hand for what is seen. */
  record Follow(Walk walk, Why why) implements Step {}

  /**
   * Nothing that this would propose is left: the person chooses among what is left, or hands over
   * to somebody more experienced, with a summary.
   *
   * @param reason why nothing more is proposed, in plain language
   * @param left what was neither tried nor ruled out, likeliest cause first
   */
  record HandOver(String reason, List<Left> left) implements Step {
    public HandOver {
      left = List.copyOf(left);
    }
  }

  /**
   * A repair that is left.
   *
   * @param fault what it is against
   * @param fix the repair
   * @param likely how likely the cause is
   * @param chance that it cures
   * @param why it is not proposed, as a few words
   */
  record Left(Fault fault, Fix fix, double likely, double chance, String why) {}

  /**
   * Why this step is the next one.
   *
   * @param minutes what it takes, with what its risk and needs are reckoned at
   * @param costNow expected minutes to the cure, or to giving up, by repairs alone
   * @param costAfter the same after this step, its own minutes included
   * @param words in plain language
   * @param figures behind it
   */
  record Why(double minutes, double costNow, double costAfter, String words, List<String> figures) {
    public Why {
      figures = List.copyOf(figures);
    }
  }
}
