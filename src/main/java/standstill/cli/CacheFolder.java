package standstill.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * Where this user's programs keep what can be made again, by the platform's convention.
 *
 * <p>The variable XDG_CACHE_HOME when it names an absolute path, else {@code .cache} in the home
 * folder (XDG Base Directory Specification 0.8, "Environment variables"). Platforms that have a
 * place of their own are known by that place: the variable LOCALAPPDATA, or the folder {@code
 * Library/Caches} in the home folder (common practice, no source).
 */
final class CacheFolder {
  /** Folders for indexes of bases on disk: with one for each base ever named they would pile up. */
  private static final int PLACES = 32;

  private CacheFolder() {}

  /**
   * Where the index over a base is kept; empty when the user has no such place.
   *
   * @param base the folder of the base; empty for the one that the program carries
   */
  static Optional<Path> ofIndex(Optional<Path> base) {
    String name = base.map(CacheFolder::place).orElse("built-in");
    return of(System.getenv(), System.getProperty("user.home", ""))
        .map(cache -> cache.resolve("standstill").resolve("index").resolve(name));
  }

  /** The user's cache folder. */
  static Optional<Path> of(Map<String, String> environment, String home) {
    return absolute(environment.get("XDG_CACHE_HOME"))
        .or(() -> absolute(environment.get("LOCALAPPDATA")))
        .or(
            () ->
                absolute(home)
                    .map(
                        h -> {
                          Path own = h.resolve("Library").resolve("Caches");
                          return Files.isDirectory(own) ? own : h.resolve(".cache");
                        }));
  }

  private static Optional<Path> absolute(@Nullable String path) {
    try {
      return Optional.ofNullable(path)
          .filter(p -> !p.isEmpty())
          .map(Path::of)
          .filter(Path::isAbsolute);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Two bases that fall on one place write over each other's index, which costs a second. */
  private static String place(Path base) {
    Path real;
    try {
      real = base.toRealPath();
    } catch (IOException e) {
      real = base.toAbsolutePath().normalize();
    }
    CRC32 sum = new CRC32();
    sum.update(real.toString().getBytes(StandardCharsets.UTF_8));
    return "base-" + sum.getValue() % PLACES;
  }
}
