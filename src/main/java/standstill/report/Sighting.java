package standstill.report;

import standstill.match.Matches;
import standstill.trace.Trace;

/**
 * What was seen in one boot, before anything is concluded from it.
 *
 * @param family id of its family
 * @param boot the boot
 * @param trace how far it came
 * @param matches signs and false trails
 * @param why why this boot was taken, when the text has several; empty otherwise
 */
public record Sighting(
    String family, standstill.log.Boot boot, Trace trace, Matches matches, String why) {
  /** A boot that is the only one of its text. */
  public Sighting(String family, standstill.log.Boot boot, Trace trace, Matches matches) {
    this(family, boot, trace, matches, "");
  }

  Sighting because(String reason) {
    return new Sighting(family, boot, trace, matches, reason);
  }
}
