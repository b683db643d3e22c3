package standstill.trace;

import java.util.OptionalDouble;
import standstill.base.Milestone;
import standstill.base.Stage;

/**
 * A milestone that was seen.
 *
 * @param milestone which
 * @param stage the stage that it proves here; a service line printed inside the initial ramdisk
 *     proves {@code root}
 * @param index place of the line in the boot, from 0
 * @param line number of the line in the input, from 1
 * @param seconds its time stamp
 */
public record Reached(
    Milestone milestone, Stage stage, int index, int line, OptionalDouble seconds) {}
