/**
 * Places and patterns in text. In: file names, offsets, pattern sources. Out: positions, spans,
 * problems, compiled patterns. It must not know what a fault or a log is; it alone knows RE2/J.
 */
@NullMarked
package standstill.text;

import org.jspecify.annotations.NullMarked;
