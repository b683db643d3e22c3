/**
 * The command line: {@code main}, commands and exit codes. It alone prints; it decides nothing
 * about causes.
 */
@NullMarked
package standstill.cli;

import org.jspecify.annotations.NullMarked;
