package standstill.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jgit.api.Git;
import org.eclipse.jgit.api.errors.GitAPIException;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.store.BaseFolder;

/** A small base in a repository of its own, made of files of the real one. */
public final class TeamBase {
  /** An entry of it. */
  public static final EntryName ENTRY = new EntryName("faults/root/root-id-on-no-disk.yaml");

  private static final List<String> FILES =
      List.of("scale.yaml", "symptoms.yaml", "rates.yaml", "circumstances.yaml");
  private static final List<String> FOLDERS = List.of("families", "checks", "steps");

  private static final List<String> FAULTS =
      List.of(
          "root-id-on-no-disk",
          "root-device-never-appears",
          "root-argument-missing",
          "encrypted-source-missing",
          "ext4-feature-unsupported");
  private static final List<String> BOOTS =
      List.of("last-initramfs-wrong-uuid", "last-crypt-source-missing", "part-ext4-feature");

  private final Path top;

  private TeamBase(Path top) {
    this.top = top;
  }

  /** Makes one with the base in the folder {@code kb} of the repository. */
  public static TeamBase make(Path top) throws IOException, GitAPIException {
    Path from = Path.of("kb");
    Path to = Files.createDirectories(top.resolve("kb"));
    for (String file : FILES) {
      Files.copy(from.resolve(file), to.resolve(file));
    }
    for (String folder : FOLDERS) {
      Path into = Files.createDirectories(to.resolve(folder));
      try (Stream<Path> files = Files.list(from.resolve(folder))) {
        for (Path file : files.toList()) {
          Files.copy(file, into.resolve(file.getFileName()));
        }
      }
    }
    Files.createDirectories(to.resolve("faults/root"));
    for (String fault : FAULTS) {
      Path file = Path.of("faults/root", fault + ".yaml");
      Files.copy(from.resolve(file), to.resolve(file));
    }
    copyBoots(to);
    // Neighbours in other stages are not copied, and neither are stops, so links to them would be
    // errors.
    try (Stream<Path> files = Files.list(to.resolve("faults/root"))) {
      for (Path file : files.toList()) {
        String text = Files.readString(file);
        Files.writeString(
            file,
            text.replaceAll("(?m)^leads-to: .*$", "leads-to: []")
                .replaceAll("(?m)^ends-in: .*\\R", ""));
      }
    }
    leaveOutUnused(to);
    Files.writeString(top.resolve("notes.txt"), "not part of the base\n");
    try (Git git = Git.init().setDirectory(top.toFile()).setInitialBranch("main").call()) {
      git.getRepository().getConfig().setBoolean("commit", null, "gpgsign", false);
      commit(git, "Keep a small base");
    }
    return new TeamBase(top);
  }

  private static void copyBoots(Path to) throws IOException {
    Path into = Files.createDirectories(to.resolve("boots"));
    for (String boot : BOOTS) {
      Files.copy(Path.of("kb/boots", boot + ".log"), into.resolve(boot + ".log"));
      // Other faults that a label names are not copied, so they would be errors too.
      Files.writeString(
          into.resolve(boot + ".yaml"),
          Files.readString(Path.of("kb/boots", boot + ".yaml"))
              .replaceAll("(?m)^(also|general): .*$", "$1: []"));
    }
  }

  /** Checks and symptoms of the stages that are not copied would be unused, which is an error. */
  private static void leaveOutUnused(Path to) throws IOException {
    Base base = BaseFolder.read(to).base();
    Set<String> checks = new HashSet<>();
    Set<String> symptoms = new HashSet<>();
    for (Fault fault : base.faults()) {
      checks.addAll(fault.toldApartBy().keySet());
      symptoms.addAll(fault.symptoms());
    }
    try (Stream<Path> files = Files.list(to.resolve("checks"))) {
      for (Path file : files.toList()) {
        if (!checks.contains(file.getFileName().toString().replace(".yaml", ""))) {
          Files.delete(file);
        }
      }
    }
    Path list = to.resolve("symptoms.yaml");
    Files.writeString(
        list,
        Arrays.stream(Files.readString(list).split("(?m)^(?=- id: )"))
            .filter(
                entry ->
                    symptoms.contains(entry.lines().findFirst().orElse("").replace("- id: ", "")))
            .collect(Collectors.joining()));
  }

  /** Takes the labelled boots away, so that nothing is to be measured. */
  public void removeBoots() throws IOException, GitAPIException {
    try (Git git = git()) {
      git.rm().addFilepattern("kb/boots").call();
      commit(git, "Keep no boots");
    }
  }

  /** The folder of the base. */
  public Path folder() {
    return top.resolve("kb");
  }

  /** The entry's file in the work tree. */
  public Path file() {
    return folder().resolve(ENTRY.path());
  }

  /** Commits everything in the work tree, as somebody does who uses git. */
  public void commitAll(String message) throws IOException, GitAPIException {
    try (Git git = git()) {
      commit(git, message);
    }
  }

  /** The repository. */
  public Git git() throws IOException {
    return Git.open(top.toFile());
  }

  /** Whether index and work tree are as the branch has them. */
  public boolean isClean() throws IOException, GitAPIException {
    try (Git git = git()) {
      return git.status().call().isClean();
    }
  }

  private static void commit(Git git, String message) throws GitAPIException {
    git.add().addFilepattern(".").call();
    git.commit()
        .setMessage(message)
        .setAuthor("carla", "carla@standstill.invalid")
        .setCommitter("carla", "carla@standstill.invalid")
        .setSign(false)
        .call();
  }
}
