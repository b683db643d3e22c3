package standstill.log;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the beginning of a line says.
 *
 * @param end offset at which the message begins
 * @param seconds seconds of the kernel's own clock
 * @param since whether {@code seconds} counts from the line before
 * @param clock seconds of the calendar, see {@link Clock}; NaN when there is none
 * @param level severity 0 to 7
 * @param process process tag, or empty
 * @param record whether it is a record of a log device, which escapes its text
 */
record Prefix(
    int end,
    OptionalDouble seconds,
    boolean since,
    double clock,
    OptionalInt level,
    String process,
    boolean record) {
  static final Prefix NONE =
      new Prefix(0, OptionalDouble.empty(), false, Double.NaN, OptionalInt.empty(), "", false);

  /** Whether any line form fitted. */
  boolean isPresent() {
    return end > 0;
  }

  /** Whether the line says when it was printed. */
  boolean isTimed() {
    return seconds.isPresent() || !Double.isNaN(clock);
  }
}
