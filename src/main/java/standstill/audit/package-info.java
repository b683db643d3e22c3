/**
 * Rules on the base as a whole, one class each, run by {@code check} and by the tests. A rule reads
 * a base and returns problems; it changes nothing.
 */
@NullMarked
package standstill.audit;

import org.jspecify.annotations.NullMarked;
