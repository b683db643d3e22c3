package standstill.guide;

import java.util.List;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;

/** What to do next. */
public sealed interface Step {

  /** Look at something and answer. */
  record Ask(Check check, Why why) implements Step {}

  /** Get the boot's text, because it would tell more than the next question. */
  record GetLog(Why why) implements Step {}

  /** Repair something and see whether it helped. */
  record Repair(Fault fault, Fix fix, double chance, Why why) implements Step {}

  /** Nothing sensible is left here: hand over to somebody more experienced, with a summary. */
  record HandOver(String reason) implements Step {}

  /**
   * Why this step is the next one.
   *
   * @param minutes what it takes, with what its risk and needs are reckoned at
   * @param costNow expected minutes to the cure, or to giving up, by repairs alone
   * @param costAfter the same after this step, its own minutes included
   * @param words in plain language
   */
  record Why(double minutes, double costNow, double costAfter, String words, List<String> figures) {
    public Why {
      figures = List.copyOf(figures);
    }
  }
}
