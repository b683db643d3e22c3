/**
 * Codes to meanings. In: one line of a log, or one code alone. Out: what the numbers and names in
 * it mean, each with the standard or source file that says so. Tables lie beside the classes, as
 * text files of the same room. It must not know what a boot, a fault or a report is.
 */
@NullMarked
package standstill.decode;

import org.jspecify.annotations.NullMarked;
