package standstill.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.OptionalInt;

/**
 * A log, and perhaps a line in it, as {@code LOG:LINE}.
 *
 * @param log file name
 * @param line from 1; empty when none was named
 */
record LogPlace(String log, OptionalInt line) {
  static LogPlace of(String text) {
    int colon = text.lastIndexOf(':');
    String number = colon < 1 ? "" : text.substring(colon + 1);
    return number.matches("[1-9]\\d{0,8}") && !isFile(text)
        ? new LogPlace(text.substring(0, colon), OptionalInt.of(Integer.parseInt(number)))
        : new LogPlace(text, OptionalInt.empty());
  }

  private static boolean isFile(String name) {
    try {
      return Files.exists(Path.of(name));
    } catch (InvalidPathException e) {
      return false;
    }
  }
}
