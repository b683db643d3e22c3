package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.eclipse.jgit.api.Git;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChronicleTest {
  private static final Duration LONG = Duration.ofSeconds(30);

  @TempDir private Path folder;

  /** Every file of the repository's own folder with its content. */
  private static Map<String, String> all(Path folder) throws IOException {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        all.put(file.toString(), java.util.Arrays.hashCode(Files.readAllBytes(file)) + "");
      }
    }
    return all;
  }

  private static void change(TeamBase team, int number) throws Exception {
    Files.writeString(team.file(), Files.readString(team.file()) + "# " + number + "\n");
    team.commitAll("Note number " + number);
  }

  @Test
  void theLastTenChangesOfAnEntryNewestFirstAndNothingIsWritten() throws Exception {
    TeamBase team = TeamBase.make(folder);
    for (int i = 1; i <= 12; i++) {
      change(team, i);
    }
    Files.writeString(folder.resolve("notes.txt"), "other\n");
    team.commitAll("Change something else");
    Map<String, String> before = all(folder);
    List<Version> versions;
    try (Chronicle chronicle = Chronicle.of(team.folder(), LONG).orElseThrow()) {
      versions = chronicle.of(TeamBase.ENTRY);
    }
    assertEquals(10, versions.size());
    assertEquals("Note number 12", versions.get(0).why());
    assertEquals("Note number 3", versions.get(9).why());
    assertEquals("carla", versions.get(0).who());
    assertEquals(before, all(folder));
  }

  @Test
  void aMergeThatBroughtAChangeInIsNotAChange() throws Exception {
    TeamBase team = TeamBase.make(folder);
    try (Git git = team.git()) {
      git.checkout().setCreateBranch(true).setName("aside").call();
      change(team, 1);
      git.checkout().setName("main").call();
      Files.writeString(folder.resolve("notes.txt"), "other\n");
      team.commitAll("Change something else");
      git.merge().include(git.getRepository().resolve("aside")).setMessage("Merge it").call();
      // A commit of no branch is a base to look at all the same.
      git.checkout().setName(git.getRepository().resolve("main").name()).call();
    }
    try (Chronicle chronicle = Chronicle.of(team.folder(), LONG).orElseThrow()) {
      assertEquals(
          List.of("Note number 1", "Keep a small base"),
          chronicle.of(TeamBase.ENTRY).stream().map(Version::why).toList());
    }
  }

  @Test
  void withoutARepositoryOrTimeThereIsNothing() throws Exception {
    assertTrue(Chronicle.of(folder, LONG).isEmpty());
    TeamBase team = TeamBase.make(folder);
    try (Chronicle chronicle = Chronicle.of(team.folder(), Duration.ZERO).orElseThrow()) {
      assertEquals(List.of(), chronicle.of(TeamBase.ENTRY));
    }
    try (Git git = Git.init().setDirectory(folder.resolve("empty").toFile()).call();
        Chronicle chronicle = Chronicle.of(folder.resolve("empty"), LONG).orElseThrow()) {
      assertEquals(List.of(), chronicle.of(TeamBase.ENTRY), git.toString());
    }
  }
}
