/**
 * The fault base: immutable records of faults, signs, checks, fixes, symptoms, false trails,
 * families and the scale of words. It does no input or output and knows nothing of logs; {@code
 * base.yaml} fills it.
 */
@NullMarked
package standstill.base;

import org.jspecify.annotations.NullMarked;
