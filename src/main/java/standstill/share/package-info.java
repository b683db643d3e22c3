/**
 * A text with its identifiers replaced, so that it can be shown to others. In: lines; out: the same
 * lines, with each name, address, serial number and disk identifier replaced by the same stand-in
 * wherever it occurs. It must not know what the lines mean.
 */
@NullMarked
package standstill.share;

import org.jspecify.annotations.NullMarked;
