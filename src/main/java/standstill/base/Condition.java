package standstill.base;

/**
 * Something that has to be so, or must not be so, for a fix or a check to make sense.
 *
 * @param name a case of a circumstance, a fact, or an answer to a check as {@code check/answer}
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

  /** Whether it asks for an answer to a check. */
  public boolean isAnswer() {
    return name.indexOf('/') >= 0;
  }

  /** The check whose answer it asks for; empty for other conditions. */
  public String check() {
    return name.substring(0, Math.max(0, name.indexOf('/')));
  }

  /** The answer that it asks for; the whole name for other conditions. */
  public String answer() {
    return name.substring(name.indexOf('/') + 1);
  }

  /** As it is written. */
  public String words() {
    return there ? name : NOT + name;
  }
}
