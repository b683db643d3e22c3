package standstill.mine;

import java.util.Optional;

/**
 * A stretch of a message.
 *
 * @param text as it stands there; of several messages that were laid over each other, all texts
 * @param kind what it is where it varies from machine to machine; empty for words that stay
 * @param tellsCause whether the words are a number or a name that tells causes apart
 */
record Part(String text, Optional<Kind> kind, boolean tellsCause) {
  static Part words(String text) {
    return new Part(text, Optional.empty(), false);
  }

  static Part cause(String text) {
    return new Part(text, Optional.empty(), true);
  }

  static Part value(String text, Kind kind) {
    return new Part(text, Optional.of(kind), false);
  }

  Part withText(String other) {
    return new Part(other, kind, tellsCause);
  }

  /** Whether another message says the same here, but for the value. */
  boolean isLike(Part other) {
    return kind.equals(other.kind) && (kind.isPresent() || text.equals(other.text));
  }
}
