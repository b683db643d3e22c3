package standstill.base;

/**
 * Something that has to be so, or must not be so, for a fix or a check to make sense.
 *
 * @param name a case of a circumstance, or a fact
 * @param there whether it has to be so
 */
public record Condition(String name, boolean there) {
  private static final String NOT = "not ";

  /** A condition as it is written: {@code name}, or {@code not name}. */
  public static Condition of(String text) {
    return text.startsWith(NOT)
        ? new Condition(text.substring(NOT.length()).strip(), false)
        : new Condition(text, true);
  }

  /** As it is written. */
  public String words() {
    return there ? name : NOT + name;
  }
}
