package standstill.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A folder with the scale, the families and the symptoms of the base, and no fault. */
final class SmallBase {
  private SmallBase() {}

  static Path in(Path folder) throws IOException {
    Path kb = folder.resolve("kb");
    Files.createDirectories(kb.resolve("families"));
    for (String name :
        new String[] {"scale.yaml", "symptoms.yaml", "families/linux.yaml", "families/pc.yaml"}) {
      Files.copy(Path.of("kb").resolve(name), kb.resolve(name));
    }
    return kb;
  }
}
