package standstill.edit;

/** Something that is not done, and why; the message is for the person who asked for it. */
public final class Refused extends Exception {
  /** A refusal with its reason, a sentence or two. */
  public Refused(String reason) {
    super(reason);
  }

  /** Why. */
  public String reason() {
    return String.valueOf(getMessage());
  }
}
