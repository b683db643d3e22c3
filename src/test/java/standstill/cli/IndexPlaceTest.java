package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where {@code search} keeps its index, and what it says when it can't. */
class IndexPlaceTest {
  @TempDir private Path folder;

  @Test
  void aFolderOfOtherFilesIsRefusedWithWhatToDo() throws Exception {
    Path kb = SmallBase.in(folder);
    List<Path> before = files(kb);
    CommandRun run = CommandRun.of("search", "--index", kb.toString(), "disk");
    assertEquals(ExitCode.USAGE, run.code());
    assertEquals("", run.out());
    assertEquals(
        "standstill: the folder '"
            + kb
            + "' holds files that are not a search index of this program: families, scale.yaml,"
            + " symptoms.yaml\nnothing in it was touched; name an empty or a new folder",
        run.err().strip());
    assertEquals(before, files(kb));
  }

  private static List<Path> files(Path folder) throws Exception {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.sorted().toList();
    }
  }

  @Test
  void whatIsNoFolderIsRefusedToo() throws Exception {
    Path file = Files.writeString(folder.resolve("log.txt"), "a log");
    CommandRun run = CommandRun.of("search", "--index", file.toString(), "disk");
    assertEquals(ExitCode.USAGE, run.code());
    assertTrue(run.err().contains("log.txt' is not a folder"), run.err());
    assertEquals("a log", Files.readString(file));
  }

  /** XDG Base Directory Specification 0.8: unset, empty and relative paths are as if not there. */
  @Test
  void theUsersCacheFolderIsFoundByThePlatformsConvention() throws Exception {
    String home = folder.toString();
    Path cache = folder.resolve("other");
    assertEquals(
        Optional.of(cache), CacheFolder.of(Map.of("XDG_CACHE_HOME", cache.toString()), home));
    for (String unusable : List.of("", "relative/cache")) {
      assertEquals(
          Optional.of(folder.resolve(".cache")),
          CacheFolder.of(Map.of("XDG_CACHE_HOME", unusable), home));
    }
    assertEquals(
        Optional.of(cache), CacheFolder.of(Map.of("LOCALAPPDATA", cache.toString()), home));
    Files.createDirectories(folder.resolve("Library/Caches"));
    assertEquals(Optional.of(folder.resolve("Library/Caches")), CacheFolder.of(Map.of(), home));
    assertEquals(Optional.empty(), CacheFolder.of(Map.of(), "?"));
  }

  @Test
  void theDefaultIsNeverInTheCurrentFolderAndOneBaseHasOnePlace() {
    Path here = Path.of("").toAbsolutePath();
    Path builtIn = CacheFolder.ofIndex(Optional.empty()).orElseThrow();
    Path ofBase = CacheFolder.ofIndex(Optional.of(Path.of("kb"))).orElseThrow();
    assertEquals(ofBase, CacheFolder.ofIndex(Optional.of(here.resolve("./kb"))).orElseThrow());
    assertTrue(!builtIn.equals(ofBase) && builtIn.isAbsolute() && ofBase.isAbsolute());
    assertTrue(!builtIn.equals(here.resolve("index")) && !ofBase.equals(here.resolve("index")));
  }
}
