package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** A copy of the project's base that a test may change. */
public final class BaseCopy {
  private BaseCopy() {}

  /** Copies the base and the labels of its boots, without the logs. */
  public static void into(Path folder) throws IOException {
    Path kb = Path.of("kb");
    try (Stream<Path> walk = Files.walk(kb)) {
      for (Path path : walk.filter(p -> p.toString().endsWith(".yaml")).toList()) {
        Path copy = folder.resolve(kb.relativize(path).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(path, copy);
      }
    }
  }
}
