package standstill.edit;

/** Something that is not done, and why; the message is for the person who asked for it. */
public final class Refused extends Exception {
  /** A refusal with its reason, a sentence or two. */
  public Refused(String reason) {
    super(reason);
  }

  /** A refusal because of something else that went wrong. */
  Refused(String reason, Throwable cause) {
    super(reason, cause);
  }

  /** Why. */
  public String reason() {
    return String.valueOf(getMessage());
  }
}
