/**
 * From a boot's lines to the stages that it reached, where progress ended, silences, loops, and
 * what the paste covers. It must not know faults or signs.
 */
@NullMarked
package standstill.trace;

import org.jspecify.annotations.NullMarked;
