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
 */
public record Sighting(String family, standstill.log.Boot boot, Trace trace, Matches matches) {}
