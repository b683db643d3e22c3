package standstill.base;

/**
 * Where a statement comes from.
 *
 * @param title the work, or {@link #COMMON_PRACTICE}
 * @param where file, section or page; empty for common practice
 */
public record Source(String title, String where) {
  /** The mark of a statement of the trade that has no source. */
  public static final String COMMON_PRACTICE = "common practice, no source";

  /** The source on one line. */
  @Override
  public String toString() {
    return where.isEmpty() ? title : title + ": " + where;
  }
}
