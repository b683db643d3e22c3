package standstill.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.FileVisitor;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * The files of a base in its folder: regular files inside it and nothing else, in bounded number.
 *
 * <p>A link would show, to whoever may read the base, any file that the program may read; a pipe or
 * a device has no end. So neither is opened, and each is a problem with its place. Folders whose
 * names begin with a dot belong to other programs and are passed over.
 */
final class BaseFiles {
  /** Most files that a folder may have. */
  static final int MOST_FILES = 10_000;

  /** Most folders between the base's own and a file. */
  static final int DEEPEST = 3;

  private static final int MOST_ENTRIES = 60_000;
  private static final int DEEPEST_LOOKED_AT = 40;
  private static final int MOST_PROBLEMS = 100;

  /**
   * What a folder holds.
   *
   * @param files in the order of their names
   * @param problems about files that are no part of the base
   */
  record Found(List<Path> files, List<Problem> problems) {
    Found {
      files = files.stream().sorted().toList();
      problems = problems.stream().sorted().toList();
    }
  }

  private BaseFiles() {}

  /**
   * The YAML files in a base's folder and the folders in it, without those of its labelled logs.
   *
   * @param shownAs the folder's name in problems
   * @throws IOException when the folder itself can't be read
   */
  static Found ofBase(Path folder, String shownAs) throws IOException {
    Path real = folder.toRealPath();
    Path boots = real.resolve(BootFolder.NAME);
    Walk walk =
        new Walk(real, shownAs, DEEPEST, DEEPEST_LOOKED_AT, n -> n.endsWith(".yaml"), boots);
    return walk.found();
  }

  /**
   * The files in one folder, whatever folders it has.
   *
   * @param wanted tells by the name
   * @throws IOException when the folder itself can't be read
   */
  static Found in(Path folder, String shownAs, Predicate<String> wanted) throws IOException {
    return new Walk(folder.toRealPath(), shownAs, 0, 1, wanted, folder).found();
  }

  /**
   * The bytes of a regular file.
   *
   * @param most bytes; one more comes when there are more
   * @throws IOException when it is no regular file, or can't be read
   */
  static byte[] read(Path file, int most) throws IOException {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    // A jar holds no links, and its file system does not take the option.
    OpenOption[] how =
        file.getFileSystem() == FileSystems.getDefault()
            ? new OpenOption[] {LinkOption.NOFOLLOW_LINKS}
            : new OpenOption[0];
    try (InputStream in = Files.newInputStream(file, how)) {
      return in.readNBytes(most + 1);
    }
  }

  /** Why a file can't be read, in a few words. */
  static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no right to read it";
    }
    if (e instanceof NoSuchFileException) {
      return "it is gone";
    }
    return e instanceof FileSystemException system && system.getReason() != null
        ? system.getReason()
        : String.valueOf(e.getMessage());
  }

  private static final class Walk implements FileVisitor<Path> {
    private final Path root;
    private final String shownAs;
    private final int deepest;
    private final Predicate<String> wanted;
    private final Path without;
    private final List<Path> files = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private int entries;

    Walk(
        Path root,
        String shownAs,
        int deepest,
        int lookedAt,
        Predicate<String> wanted,
        Path without)
        throws IOException {
      this.root = root;
      this.shownAs = shownAs;
      this.deepest = deepest;
      this.wanted = wanted;
      this.without = without;
      Files.walkFileTree(root, EnumSet.noneOf(FileVisitOption.class), lookedAt, this);
    }

    Found found() {
      return new Found(files, problems);
    }

    private String shown(Path path) {
      return shownAs + "/" + root.relativize(path).toString().replace('\\', '/');
    }

    private FileVisitResult problem(Path path, String what, String advice) {
      problems.add(Problem.error(Position.ofFile(shown(path)), what, advice));
      return problems.size() < MOST_PROBLEMS ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes is) {
      if (folder.equals(root)) {
        return FileVisitResult.CONTINUE;
      }
      return folder.equals(without) || isHidden(folder) ? FileVisitResult.SKIP_SUBTREE : counted();
    }

    private static boolean isHidden(Path folder) {
      return String.valueOf(folder.getFileName()).startsWith(".");
    }

    private FileVisitResult counted() {
      if (++entries > MOST_ENTRIES) {
        problem(
            root,
            "more than " + MOST_ENTRIES + " files and folders",
            "a base has its folder for itself");
        return FileVisitResult.TERMINATE;
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path path, BasicFileAttributes is) {
      if (counted() == FileVisitResult.TERMINATE) {
        return FileVisitResult.TERMINATE;
      }
      String name = String.valueOf(path.getFileName());
      if (is.isSymbolicLink()) {
        return wanted.test(name) || (deepest > 0 && Files.isDirectory(path))
            ? problem(
                path, "symbolic link; links are not followed", "put what it leads to in its place")
            : FileVisitResult.CONTINUE;
      }
      if (is.isDirectory()) {
        return deepest > 0
            ? problem(path, "folders nested more than " + DEEPEST_LOOKED_AT + " deep", "")
            : FileVisitResult.CONTINUE;
      }
      if (!wanted.test(name)) {
        return FileVisitResult.CONTINUE;
      }
      if (!is.isRegularFile()) {
        return problem(path, "neither a file nor a folder", "allowed: regular files");
      }
      if (root.relativize(path).getNameCount() > deepest + 1) {
        return problem(
            path, "file lies too deep", "allowed: at most " + deepest + " folders above it");
      }
      if (files.size() == MOST_FILES) {
        problem(root, "more than " + MOST_FILES + " files of a base", "split the base");
        return FileVisitResult.TERMINATE;
      }
      files.add(path);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path path, IOException e) throws IOException {
      if (path.equals(root)) {
        throw e;
      }
      // What is gone between the look at its folder and at itself was on its way out.
      return e instanceof NoSuchFileException
          ? FileVisitResult.CONTINUE
          : problem(path, "can't be read: " + reason(e), "");
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException e) {
      return e == null
          ? FileVisitResult.CONTINUE
          : problem(folder, "can't be read: " + reason(e), "");
    }
  }
}
