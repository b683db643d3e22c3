package standstill.trace;

/**
 * A line that comes again and again, but for its numbers.
 *
 * @param line number in the input of the first one
 * @param lastLine number in the input of the last one
 * @param times how often it came
 * @param text the last one's message
 */
public record Loop(int line, int lastLine, int times, String text) {}
