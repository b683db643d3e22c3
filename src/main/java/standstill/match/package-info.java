/**
 * Which sign stands on which lines, with captured values, and which lines are false trails. It must
 * not know what a sign proves; {@code rank} does.
 */
@NullMarked
package standstill.match;

import org.jspecify.annotations.NullMarked;
