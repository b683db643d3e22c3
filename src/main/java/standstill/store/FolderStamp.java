package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;

/**
 * What a base's folder looks like from outside: names, sizes, times and file numbers. Cheap to
 * take, and different when a file was added, taken away, replaced or written to.
 */
record FolderStamp(List<String> files) {
  /** Equal to no folder's stamp. */
  static final FolderStamp NONE = new FolderStamp(List.of("never looked"));

  /** The folder as it is now; an unreadable one has a stamp too. */
  static FolderStamp of(Path folder) {
    List<String> files = new ArrayList<>();
    try {
      add(BaseFiles.ofBase(folder, ""), files);
      Path boots = folder.resolve(BootFolder.NAME);
      if (Files.isDirectory(boots)) {
        add(BaseFiles.in(boots, BootFolder.NAME, name -> name.endsWith(".yaml")), files);
      }
    } catch (IOException e) {
      files.add("unreadable: " + e.getMessage());
    }
    return new FolderStamp(files);
  }

  private static void add(BaseFiles.Found found, List<String> files) throws IOException {
    for (Path file : found.files()) {
      BasicFileAttributes is =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      files.add(file + " " + is.size() + " " + is.lastModifiedTime() + " " + is.fileKey());
    }
    found.problems().forEach(problem -> files.add(problem.toString()));
  }
}
