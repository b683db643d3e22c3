package standstill.base;

import java.time.LocalDate;

/**
 * When somebody last read a whole entry and stood by it.
 *
 * @param on the day
 * @param by who
 */
public record Reviewed(LocalDate on, String by) {}
