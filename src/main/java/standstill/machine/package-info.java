/**
 * What the lines of a boot say of the machine: things with their states, wishes, who waits for
 * whom, and which statements hold of them. In comes a boot with its trace, out goes a {@link
 * standstill.machine.Machine}. It must not know faults or signs, and it names no kernel: which line
 * says what is data of the family.
 */
@NullMarked
package standstill.machine;

import org.jspecify.annotations.NullMarked;
