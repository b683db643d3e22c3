package standstill.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Asks a person, one question after the other; an empty answer leaves a blank for later. */
final class Interview {
  private static final int TRIES = 3;

  private final BufferedReader in;
  private final PrintWriter out;
  private boolean ended;

  Interview(BufferedReader in, PrintWriter out) {
    this.in = in;
    this.out = out;
  }

  /**
   * Asks until the answer will do, at most three times.
   *
   * @param suggestion what an empty answer stands for; empty for nothing
   */
  Optional<String> ask(Question question, String suggestion) {
    String words =
        question.allowed().isEmpty() || question.allowed().size() > 12
            ? ""
            : ": " + String.join(", ", question.allowed());
    String otherwise = suggestion.isEmpty() ? "" : " [" + suggestion + "]";
    for (int i = 0; i < TRIES && !ended; i++) {
      Paragraph.lines("", question.key() + " - " + question.hint() + words + otherwise)
          .forEach(out::println);
      String answer = Question.tidy(line());
      if (answer.isEmpty()) {
        return suggestion.isEmpty() ? Optional.empty() : Optional.of(suggestion);
      }
      Optional<String> wrong = question.wrong(answer);
      if (wrong.isEmpty()) {
        return Optional.of(answer);
      }
      Paragraph.lines("", wrong.get()).forEach(out::println);
    }
    return Optional.empty();
  }

  private String line() {
    out.print("> ");
    out.flush();
    try {
      String line = in.readLine();
      ended = line == null;
      return line == null ? "" : line;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
