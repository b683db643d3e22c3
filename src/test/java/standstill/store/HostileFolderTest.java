package standstill.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import standstill.base.yaml.Loaded;
import standstill.search.Search;
import standstill.text.Problem;

/** A base that somebody prepared to read other files, to hang the program, or to tire it. */
@Timeout(60)
class HostileFolderTest {
  @TempDir private Path kb;
  @TempDir private Path elsewhere;

  private Path faults;

  @BeforeEach
  void copyTheBase() throws Exception {
    BaseCopy.into(kb);
    faults = kb.resolve("faults/root");
  }

  private List<String> errors() throws IOException {
    return BaseFolder.read(kb).problems().stream()
        .filter(Problem::isError)
        .map(p -> p.toString().replace(kb.toString(), "kb"))
        .toList();
  }

  private Path secret() throws IOException {
    return Files.writeString(elsewhere.resolve("accounts"), "ada $argon2id$secret\n");
  }

  private static void pipe(Path at) throws Exception {
    Process made = new ProcessBuilder("mkfifo", at.toString()).start();
    assumeTrue(made.waitFor() == 0, "there are no pipes here");
  }

  @Test
  void aLinkOutOfTheBaseIsRefusedAndNothingOfItShown() throws Exception {
    Files.createSymbolicLink(faults.resolve("peek.yaml"), secret());
    assertEquals(
        List.of(
            "kb/faults/root/peek.yaml: symbolic link; links are not followed\n"
                + "  put what it leads to in its place"),
        errors());
  }

  @Test
  void aFolderThatIsALinkIsNotPassedOverInSilence() throws Exception {
    Files.createSymbolicLink(kb.resolve("faults/more"), elsewhere);
    assertEquals(1, errors().size());
    assertTrue(errors().get(0).startsWith("kb/faults/more: symbolic link"), errors().toString());
  }

  @Test
  void linksAmongTheLabelledBootsAreRefusedToo() throws Exception {
    Path boots = kb.resolve("boots");
    Files.createSymbolicLink(boots.resolve("peek.yaml"), secret());
    Path label;
    try (var labels = Files.list(boots)) {
      label = labels.filter(p -> !p.endsWith("peek.yaml")).findFirst().orElseThrow();
    }
    String log = label.getFileName().toString().replace(".yaml", ".log");
    Files.createSymbolicLink(boots.resolve(log), secret());
    BootFolder.Boots read = BootFolder.read(boots);
    List<String> said = read.problems().stream().map(Problem::toString).toList();
    assertTrue(
        said.stream().anyMatch(p -> p.contains("peek.yaml: symbolic link")), said.toString());
    assertTrue(said.stream().anyMatch(p -> p.contains(log + ": symbolic link")), said.toString());
    assertFalse(said.toString().contains("argon2id"));
    assertTrue(read.logs().stream().noneMatch(l -> l.label().log().equals(log)));
  }

  @Test
  void aFolderThatIsNamedByALinkIsReadAllTheSame() throws Exception {
    Path link = Files.createSymbolicLink(elsewhere.resolve("base"), kb);
    Loaded loaded = BaseFolder.read(link);
    assertFalse(loaded.hasErrors(), loaded.problems().toString());
    assertEquals(BaseFolder.read(kb).base().faults().size(), loaded.base().faults().size());
  }

  /** As the packed program reads the base that it carries. */
  @Test
  void aBaseInAnArchiveIsReadToo() throws Exception {
    Path archive = elsewhere.resolve("base.zip");
    try (FileSystem zip = FileSystems.newFileSystem(archive, Map.of("create", "true"))) {
      Path inside = Files.createDirectory(zip.getPath("/kb"));
      for (String name : List.of("scale.yaml", "symptoms.yaml")) {
        Files.copy(kb.resolve(name), inside.resolve(name));
      }
      assertFalse(BaseFolder.read(inside).hasErrors());
    }
  }

  @Test
  void aPipeIsRefusedAndNotWaitedFor() throws Exception {
    pipe(faults.resolve("endless.yaml"));
    assertEquals(
        List.of(
            "kb/faults/root/endless.yaml: neither a file nor a folder\n  allowed: regular files"),
        errors());
  }

  @Test
  void tooManyFilesAreSaidToBeSo() throws Exception {
    Path many = Files.createDirectory(kb.resolve("faults/many"));
    for (int i = 0; i < BaseFiles.MOST_FILES; i++) {
      Files.createFile(many.resolve("lamp-" + i + ".yaml"));
    }
    assertTrue(
        errors().stream().anyMatch(e -> e.startsWith("kb/: more than 10000 files")),
        () -> "not said");
    assertTrue(errors().stream().noneMatch(e -> e.contains("file is missing")));
  }

  @Test
  void aFileThatLiesTooDeepIsSaidToBeSo() throws Exception {
    Path deep = Files.createDirectories(faults.resolve("by/lamp"));
    Files.writeString(deep.resolve("dark.yaml"), "id: dark");
    assertEquals(
        List.of(
            "kb/faults/root/by/lamp/dark.yaml: file lies too deep\n"
                + "  allowed: at most 3 folders above it"),
        errors());
  }

  @Test
  void aDeepPileOfFoldersIsGivenUp() throws Exception {
    Files.createDirectories(faults.resolve("a/".repeat(60)));
    assertTrue(errors().get(0).contains("folders nested more than 40 deep"), errors().toString());
  }

  @Test
  void foldersOfOtherProgramsArePassedOver() throws Exception {
    Path git = Files.createDirectories(kb.resolve(".git/a/b/c/d"));
    Files.writeString(git.resolve("x.yaml"), "no: base");
    Files.createSymbolicLink(kb.resolve("README"), secret());
    assertEquals(List.of(), errors());
  }

  private void patterns(String pattern, int count) throws IOException {
    Path entry = faults.resolve("root-id-on-no-disk.yaml");
    String text = Files.readString(entry);
    StringBuilder signs = new StringBuilder("signs:\n");
    for (int i = 0; i < count; i++) {
      signs
          .append("  - id: lamp-")
          .append(i)
          .append("\n    line: 'lamp")
          .append(i)
          .append(pattern)
          .append("'\n");
      signs.append("    shows: usually\n    elsewhere: never\n");
      signs.append("    seen: ['lamp").append(i).append("']\n    unlike: ['y']\n");
    }
    Files.writeString(entry, text.replaceFirst("(?m)^signs:\n", signs.toString()));
  }

  @Test
  void aPatternThatRepeatsTooMuchIsRefusedAtItsPlace() throws Exception {
    patterns("x{0,999}", 30);
    List<String> errors = errors();
    assertEquals(30, errors.size(), errors.toString());
    assertTrue(
        errors
            .get(0)
            .matches(
                "(?s)kb/faults/root/root-id-on-no-disk.yaml:\\d+:18: pattern repeats a part 999"
                    + " times; at most 250 are allowed.*"),
        errors.get(0));
  }

  @Test
  void aBaseThatRepeatsTooMuchIsRefusedAtThePlaceWhereItDoes() throws Exception {
    patterns("x{0,250}y{0,250}", 60);
    List<String> errors = errors();
    assertFalse(errors.isEmpty());
    assertTrue(errors.get(0).contains("the signs up to this one repeat too much"), errors.get(0));
  }

  @Test
  void theWatchTellsOfAPipeAndGoesOn() throws Exception {
    BaseInUse inUse = BaseInUse.of(kb, base -> Search.open(base, Optional.empty()));
    Edition first = inUse.now().edition();
    pipe(faults.resolve("endless.yaml"));
    inUse.look();
    inUse.look();
    assertTrue(
        inUse.now().refused().orElseThrow().errors().get(0).message().contains("neither a file"));
    Files.delete(faults.resolve("endless.yaml"));
    inUse.look();
    inUse.look();
    assertTrue(inUse.now().refused().isEmpty());
    assertTrue(inUse.now().edition().number() > first.number());
  }

  /** Each error is thrown by what makes the search, as part of reading the base. */
  @Test
  void theWatchSurvivesAnyErrorAndSaysIt() throws Exception {
    List<Error> errors = new ArrayList<>();
    BaseInUse inUse =
        BaseInUse.of(
            kb,
            base -> {
              if (!errors.isEmpty()) {
                throw errors.remove(0);
              }
              return Search.open(base, Optional.empty());
            });
    inUse.onChange(
        state -> {
          throw new IllegalStateException("a listener that fails");
        });
    Edition first = inUse.now().edition();
    int number = 0;
    for (Error error :
        List.of(new OutOfMemoryError(), new StackOverflowError(), new AssertionError("odd"))) {
      errors.add(error);
      Path scale = kb.resolve("scale.yaml");
      Files.writeString(scale, Files.readString(scale) + "# " + ++number + "\n");
      inUse.look();
      inUse.look();
      assertSame(first, inUse.now().edition());
      String said = inUse.now().refused().orElseThrow().errors().get(0).toString();
      assertTrue(said.contains("could not be"), said);
    }
    Path scale = kb.resolve("scale.yaml");
    Files.writeString(scale, Files.readString(scale) + "# repaired\n");
    inUse.look();
    inUse.look();
    assertTrue(inUse.now().refused().isEmpty(), "it goes on");
    assertTrue(inUse.now().edition().number() > first.number());
  }

  @Test
  void aFolderThatDoesNotAnswerIsSaidOnThePage() throws Exception {
    CountDownLatch hangs = new CountDownLatch(1);
    CountDownLatch begun = new CountDownLatch(1);
    List<Boolean> second = new ArrayList<>();
    BaseInUse inUse =
        BaseInUse.of(
            kb,
            base -> {
              if (!second.isEmpty()) {
                begun.countDown();
                try {
                  hangs.await(30, TimeUnit.SECONDS);
                } catch (InterruptedException e) {
                  Thread.currentThread().interrupt();
                }
              }
              second.add(true);
              return Search.open(base, Optional.empty());
            });
    Files.writeString(kb.resolve("rates.yaml"), Files.readString(kb.resolve("rates.yaml")) + "#\n");
    Thread watch =
        new Thread(
            () -> {
              inUse.look();
              inUse.look();
            });
    watch.start();
    assertTrue(begun.await(30, TimeUnit.SECONDS));
    assertTrue(inUse.now().refused().isEmpty(), "it may still answer");
    BaseInUse.State late = inUse.after(Duration.ofMinutes(2));
    hangs.countDown();
    watch.join();
    assertEquals(
        "the folder has not answered", late.refused().orElseThrow().errors().get(0).message());
    assertTrue(inUse.now().refused().isEmpty());
  }
}
