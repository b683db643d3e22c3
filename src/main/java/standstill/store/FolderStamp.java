package standstill.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

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
    try (Stream<Path> walk = BaseFolder.yamlFiles(folder)) {
      for (Path file : walk.toList()) {
        BasicFileAttributes is = Files.readAttributes(file, BasicFileAttributes.class);
        files.add(file + " " + is.size() + " " + is.lastModifiedTime() + " " + is.fileKey());
      }
    } catch (IOException | UncheckedIOException e) {
      files.add("unreadable: " + e.getMessage());
    }
    return new FolderStamp(files);
  }
}
