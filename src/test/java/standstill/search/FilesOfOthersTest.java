package standstill.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import standstill.base.Base;
import standstill.base.TestBase;

/**
 * The index never takes a folder that is not its own, and deletes nothing that it did not write.
 */
class FilesOfOthersTest {
  private static Base base;
  private static Base other;

  @TempDir private Path folder;

  @BeforeAll
  static void bases() {
    base = new TestBase().fault("lantern-dark", 1).add().build();
    other = new TestBase().fault("lantern-dim", 1).add().build();
  }

  /** Names and contents of everything in the folder. */
  private Map<String, String> contents() throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path path : walk.toList()) {
        contents.put(
            folder.relativize(path).toString(),
            Files.isRegularFile(path)
                ? Files.readString(path, java.nio.charset.StandardCharsets.ISO_8859_1)
                : "");
      }
    }
    return contents;
  }

  private void isRefusedAndUntouched(String named) throws IOException {
    Map<String, String> before = contents();
    ForeignFolderException refused =
        assertThrows(
            ForeignFolderException.class, () -> Search.open(other, Optional.of(folder)), named);
    assertTrue(refused.getMessage().contains(named), refused.getMessage());
    assertEquals(before, contents());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "thesis.txt",
        "segments_1",
        "_0.cfs",
        "_0.txt",
        "write.lock",
        ".hidden",
        "index.html",
        "segments.gen",
        "STANDSTILL-INDEX.txt"
      })
  void aFolderWithOneFileOfSomebodyElseIsRefused(String name) throws Exception {
    Files.writeString(folder.resolve(name), "work of three years");
    isRefusedAndUntouched(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"thesis.txt", "_notes.doc", "_0.txt", "segments_of_lectures.txt", ".hidden"})
  void aFileThatSomebodyPutIntoTheIndexIsNotDeleted(String name) throws Exception {
    Search.open(base, Optional.of(folder));
    Files.writeString(folder.resolve(name), "work of three years");
    isRefusedAndUntouched(name);
  }

  @Test
  void aFolderInTheIndexIsNotTouched() throws Exception {
    Search.open(base, Optional.of(folder));
    Files.createDirectory(folder.resolve("_1.cfs"));
    Files.writeString(folder.resolve("_1.cfs/photo.raw"), "lamp");
    isRefusedAndUntouched("_1.cfs");
  }

  @Test
  void aLinkWithTheNameOfAnIndexFileIsNotFollowed(@TempDir Path elsewhere) throws Exception {
    Search.open(base, Optional.of(folder));
    Path diary = Files.writeString(elsewhere.resolve("diary"), "dear lantern");
    Files.createSymbolicLink(folder.resolve("segments_9"), diary);
    isRefusedAndUntouched("segments_9");
    assertEquals("dear lantern", Files.readString(diary));
  }

  /** The same library, but not this program. */
  @Test
  void theIndexOfAnotherProgramIsRefused() throws Exception {
    try (FSDirectory disk = FSDirectory.open(folder);
        IndexWriter writer = new IndexWriter(disk, new IndexWriterConfig())) {
      writer.addDocument(new Document());
      writer.commit();
    }
    isRefusedAndUntouched("_0.cfe, _0.cfs, _0.si and 2 more");
  }

  @Test
  void aFaultBaseIsNoPlaceForItsIndex() throws Exception {
    Files.createDirectories(folder.resolve("faults/root"));
    Files.writeString(folder.resolve("scale.yaml"), "often: 5");
    isRefusedAndUntouched("faults, scale.yaml");
  }

  @Test
  void anEmptyOrNewFolderBecomesTheIndexesAndStaysSo() throws Exception {
    Path fresh = folder.resolve("a/b");
    assertTrue(Search.open(base, Optional.of(fresh)).wasBuilt());
    assertFalse(Search.open(base, Optional.of(fresh)).wasBuilt());
    assertTrue(Search.open(other, Optional.of(fresh)).wasBuilt(), "of another base");
    assertFalse(Search.open(other, Optional.of(fresh)).wasBuilt());
    assertTrue(Files.readString(fresh.resolve("STANDSTILL-INDEX.txt")).contains("search index"));
  }

  @Test
  void aPlaceholderOfVersionControlIsLeftAlone() throws Exception {
    Files.createFile(folder.resolve(".gitkeep"));
    Search.open(base, Optional.of(folder));
    Search.open(other, Optional.of(folder));
    assertTrue(Files.exists(folder.resolve(".gitkeep")));
    assertFalse(Search.open(other, Optional.of(folder)).wasBuilt());
  }

  @Test
  void aStartAfterAnEndInTheMiddleOfMarkingGoesOn() throws Exception {
    Files.writeString(folder.resolve("STANDSTILL-INDEX.txt"), "This folder ho");
    assertTrue(Search.open(base, Optional.of(folder)).wasBuilt());
    assertFalse(Search.open(base, Optional.of(folder)).wasBuilt());
  }
}
