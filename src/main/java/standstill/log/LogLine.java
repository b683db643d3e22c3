package standstill.log;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One line as a person would have read it.
 *
 * @param number 1-based number of the (first) line of the input that it came from, separated by LF
 *     or CRLF
 * @param lastNumber number of the last input line that it came from; more than {@code number} when
 *     wrapped lines were joined
 * @param text the line without terminal codes and forum damage, with its time stamp
 * @param message the text without time stamp, level, host and process tag; status columns are kept
 * @param seconds seconds since the start of the boot (or of the capture), when the line says so
 * @param level kernel level or syslog severity 0 to 7 (RFC 5424 section 6.2.1), when the line says
 *     so
 * @param process the process tag such as {@code udevd} or {@code kernel}; empty when the line has
 *     none
 */
public record LogLine(
    int number,
    int lastNumber,
    String text,
    String message,
    OptionalDouble seconds,
    OptionalInt level,
    String process) {
  private static final int LONGEST_SHAPE = 120;

  /**
   * The message with every number replaced, so that two lines that differ in numbers only are one.
   */
  public String shape() {
    StringBuilder out = new StringBuilder(Math.min(message.length(), LONGEST_SHAPE));
    boolean inNumber = false;
    for (int i = 0; i < message.length() && out.length() < LONGEST_SHAPE; i++) {
      char c = message.charAt(i);
      boolean digit = c >= '0' && c <= '9';
      if (!digit) {
        out.append(c);
      } else if (!inNumber) {
        out.append('#');
      }
      inNumber = digit;
    }
    return out.toString();
  }
}
