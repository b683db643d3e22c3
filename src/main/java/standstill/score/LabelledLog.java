package standstill.score;

import standstill.base.Label;

/**
 * A log with its label.
 *
 * @param label what is known of it
 * @param bytes the log, expanded
 */
public record LabelledLog(Label label, byte[] bytes) {}
