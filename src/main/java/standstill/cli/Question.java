package standstill.cli;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * One thing that a new entry has to say.
 *
 * @param key of the entry
 * @param hint what to write, for people
 * @param allowed the words of which the answer is one; empty for any text
 * @param many whether several words may be given, with commas
 */
record Question(String key, String hint, List<String> allowed, boolean many) {
  private static final Set<String> SENTENCES = Set.of("title");
  private static final int LONGEST_TITLE = 90;
  private static final int LONGEST = 2_000;

  Question {
    allowed = List.copyOf(allowed);
  }

  static Question text(String key, String hint) {
    return new Question(key, hint, List.of(), false);
  }

  static Question word(String key, String hint, List<String> allowed) {
    return new Question(key, hint, allowed, false);
  }

  static Question words(String key, String hint, List<String> allowed) {
    return new Question(key, hint, allowed, true);
  }

  /** The answer as it goes into the entry: on one line, without blanks at its ends. */
  static String tidy(String answer) {
    return answer.strip().replaceAll("\\s+", " ");
  }

  /** What is wrong with an answer; empty when it will do. */
  Optional<String> wrong(String answer) {
    if (answer.length() > LONGEST) {
      return Optional.of("longer than " + LONGEST + " characters");
    }
    if (SENTENCES.contains(key) && (answer.length() > LONGEST_TITLE || answer.endsWith("."))) {
      return Optional.of(
          "a title has at most " + LONGEST_TITLE + " characters and no full stop at its end");
    }
    if (key.equals("minutes") && !answer.matches("[1-9]\\d{0,2}")) {
      return Optional.of("'" + answer + "' is not a whole number from 1 to 999");
    }
    if (allowed.isEmpty()) {
      return Optional.empty();
    }
    return parts(answer)
        .filter(word -> !allowed.contains(word))
        .findFirst()
        .map(word -> "'" + word + "' is none of: " + String.join(", ", allowed));
  }

  /** The words of an answer. */
  Stream<String> parts(String answer) {
    return many
        ? Stream.of(answer.split(",")).map(String::strip).filter(w -> !w.isEmpty())
        : Stream.of(answer);
  }
}
