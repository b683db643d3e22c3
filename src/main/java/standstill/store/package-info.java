/**
 * What a running program holds: the base in use, read from a folder or from the program itself and
 * taken up again when it changes, and pasted logs. It must not know how anything is shown.
 */
@NullMarked
package standstill.store;

import org.jspecify.annotations.NullMarked;
