package standstill.mine;

import java.util.Optional;

/**
 * A stretch of a message.
 *
 * @param text as it stands there
 * @param kind what it is where it varies from machine to machine; empty for words that stay
 */
record Part(String text, Optional<Kind> kind) {
  static Part words(String text) {
    return new Part(text, Optional.empty());
  }

  static Part value(String text, Kind kind) {
    return new Part(text, Optional.of(kind));
  }
}
