package standstill.trace;

/**
 * A silence between two lines.
 *
 * @param index place in the boot of the line that ends the silence, from 0
 * @param line its number in the input
 * @param seconds how long it was silent
 */
public record Gap(int index, int line, double seconds) {}
