package standstill.mine;

import standstill.base.Stage;

/**
 * A line that no sign, false trail or milestone explains.
 *
 * @param log name of its log
 * @param line number of the line in the log, from 1
 * @param message the message without time stamp, level, host and process tag
 * @param stage the stage that the boot had reached
 * @param grave whether the line speaks of failure
 * @param after how many lines of the stalled boot follow it; {@link #CAME_THROUGH} when it came
 *     through
 */
public record Stray(String log, int line, String message, Stage stage, boolean grave, int after) {
  /** In place of a distance from the end, for a boot that nothing stopped. */
  public static final int CAME_THROUGH = Integer.MAX_VALUE;
}
