package standstill.log;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;

/** Short ways to read a text in tests. */
final class Read {
  private Read() {}

  static List<LogLine> lines(String text) {
    return lines(TestForms.reader().read(text));
  }

  static List<LogLine> lines(BootLog log) {
    return log.boots().stream().flatMap(b -> b.lines().stream()).toList();
  }

  static List<String> texts(String text) {
    return lines(text).stream().map(LogLine::text).toList();
  }

  static List<String> messages(String text) {
    return lines(text).stream().map(LogLine::message).toList();
  }

  static List<Integer> numbers(String text) {
    return lines(text).stream().map(LogLine::number).toList();
  }

  static byte[] resource(String name) {
    try (InputStream in = Read.class.getResourceAsStream("/logs/" + name)) {
      return Objects.requireNonNull(in, name).readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
