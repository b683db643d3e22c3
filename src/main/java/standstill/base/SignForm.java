package standstill.base;

import standstill.text.Pattern;

/** What has to be in a log for a sign to be there. */
public sealed interface SignForm {

  /** The sign in a few words for a report. */
  String describe();

  /**
   * A line that matches.
   *
   * @param line matched anywhere in a message
   * @param atEnd only within that many last lines; 0 for anywhere
   * @param repeats at least that often; 1 or more
   * @param afterGap only when at least that many seconds of silence stand before it; 0 for no such
   *     demand
   */
  record OnLine(Pattern line, int atEnd, int repeats, double afterGap) implements SignForm {
    @Override
    public String describe() {
      StringBuilder out = new StringBuilder("/").append(line.source()).append("/");
      if (atEnd > 0) {
        out.append(" within the last ").append(atEnd).append(" lines");
      }
      if (repeats > 1) {
        out.append(" at least ").append(repeats).append(" times");
      }
      if (afterGap > 0) {
        out.append(" after ").append((int) afterGap).append(" s of silence");
      }
      return out.toString();
    }
  }

  /**
   * A milestone that was reached.
   *
   * @param milestone id of the milestone
   */
  record Reached(String milestone) implements SignForm {
    @Override
    public String describe() {
      return "milestone '" + milestone + "'";
    }
  }

  /**
   * A milestone that is missing although the paste covers its stage.
   *
   * @param milestone id of the milestone
   */
  record Without(String milestone) implements SignForm {
    @Override
    public String describe() {
      return "no milestone '" + milestone + "'";
    }
  }
}
