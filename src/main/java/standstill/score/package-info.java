/**
 * Labelled boots and simulated walks to measures of how good the diagnosis is. Nothing is evaluated
 * on logs that it was fitted on.
 */
@NullMarked
package standstill.score;

import org.jspecify.annotations.NullMarked;
