package standstill.base;

import java.util.Locale;
import java.util.Optional;

/** What a line says of a thing or a wish. Closed: which line says it is data. */
public enum ThingState {
  /** It is there, or it is asked for. */
  SEEN("seen"),
  /** A driver has taken it. */
  DRIVEN("has a driver"),
  /** Somebody waits for it, or has begun to start it. */
  STARTING("waited for"),
  /** It does its work: a link is up, a volume open, a file system mounted, a unit started. */
  READY("ready"),
  /** Nothing answers there. */
  DOWN("nothing there"),
  /** Some of its members are missing. */
  INCOMPLETE("incomplete"),
  /** It was tried and did not work, or was given up. */
  FAILED("failed"),
  /** It was there and no longer is. */
  GONE("gone");

  private final String title;

  ThingState(String title) {
    this.title = title;
  }

  /** In words for people. */
  public String title() {
    return title;
  }

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The state with that word. */
  public static Optional<ThingState> of(String word) {
    for (ThingState state : values()) {
      if (state.word().equals(word)) {
        return Optional.of(state);
      }
    }
    return Optional.empty();
  }

  /**
   * The state of something of which this was known, after a line that says another. A line that
   * only names it takes nothing back, nor does a driver's line from something that is ready.
   */
  public ThingState then(ThingState news) {
    boolean weaker =
        switch (news) {
          case SEEN -> true;
          case DRIVEN -> this != SEEN;
          default -> false;
        };
    return weaker ? this : news;
  }
}
