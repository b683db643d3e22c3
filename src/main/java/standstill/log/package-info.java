/**
 * Bytes to a {@link standstill.log.BootLog}: decoding, terminal emulation, forum damage, line
 * forms, several boots in one paste. The line forms of a family come in as a parameter. It must not
 * know what a fault is.
 */
@NullMarked
package standstill.log;

import org.jspecify.annotations.NullMarked;
