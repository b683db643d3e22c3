package standstill.rank;

/** What the ranking says of a boot. */
public enum Verdict {
  /** It stalled, and a fault of the base is the likeliest cause. */
  STALLED("stalled"),
  /** It stalled or may have, and no fault of the base explains it. */
  UNLISTED("unlisted"),
  /** It did not stall. */
  NO_STALL("no-stall");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** The word used in JSON and on the screen. */
  public String word() {
    return word;
  }
}
