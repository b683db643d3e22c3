package standstill.search;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A folder in which the index may be written, and the old one deleted.
 *
 * <p>The library that writes the index deletes what it takes for its own by the form of the name
 * alone. So a folder is only handed to it when it carries a marker that this program wrote, or is
 * empty, and when everything else in it is a plain file with the name and the first bytes of an
 * index file. A folder that holds anything else is refused as a whole, and nothing in it is
 * touched.
 */
final class IndexFolder {
  /** The file that says whose folder it is. */
  static final String MARKER = "STANDSTILL-INDEX.txt";

  /** Held while the index is written. */
  static final String LOCK = "rebuild.lock";

  private static final byte[] MARK =
      """
      This folder holds the search index of Standstill. It can be deleted as a whole at any time;
      the program then writes it again. It refuses the folder when other files are put into it.
      """
          .getBytes(StandardCharsets.UTF_8);

  /** Lucene's file names: segments, and the extensions of the parts that its codec writes. */
  private static final String OF_THE_LIBRARY =
      "(pending_)?segments(_[0-9a-z]+)?"
          + "|_[0-9a-z]+(_[0-9A-Za-z_-]+)?"
          + "\\.(cfs|cfe|si|fnm|fdt|fdx|fdm|nvd|nvm|doc|pos|pay|psm|tim|tip|tmd|tmp)";

  /** First bytes of every file of the library (CodecUtil.CODEC_MAGIC), most significant first. */
  private static final byte[] MAGIC = {0x3f, (byte) 0xd7, 0x6c, 0x17};

  private static final int MOST_NAMED = 3;

  private final Path path;

  private IndexFolder(Path path) {
    this.path = path;
  }

  /**
   * The folder, marked as the index's from now on; it is made when there is none.
   *
   * @throws ForeignFolderException when it holds anything that this program did not write
   * @throws IOException when it can't be read, made or marked
   */
  static IndexFolder claim(Path path) throws IOException {
    if (!Files.isDirectory(path)) {
      if (Files.exists(path)) {
        throw new ForeignFolderException("'" + path + "' is not a folder");
      }
      Files.createDirectories(path);
    }
    IndexFolder folder = new IndexFolder(path);
    folder.refuseForeign();
    folder.mark();
    return folder;
  }

  Path path() {
    return path;
  }

  /** Fails when something foreign has come into the folder. */
  void refuseForeign() throws IOException {
    List<String> own = new ArrayList<>();
    List<String> foreign = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(path)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        if (isOwn(file, name)) {
          own.add(name);
        } else if (!isPlaceholder(file, name)) {
          foreign.add(name);
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    // Asked last: another process may have marked the empty folder and begun to write meanwhile.
    if (!isMarked()) {
      foreign.addAll(0, own);
    }
    if (!foreign.isEmpty()) {
      foreign.sort(null);
      String rest =
          foreign.size() > MOST_NAMED ? " and " + (foreign.size() - MOST_NAMED) + " more" : "";
      throw new ForeignFolderException(
          "the folder '"
              + path
              + "' holds files that are not a search index of this program: "
              + foreign.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
              + rest);
    }
  }

  /** Deletes the files of the index that is there, which {@link #refuseForeign} has passed. */
  void clear() throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(path)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        if (name.matches(OF_THE_LIBRARY) && isOwn(file, name)) {
          Files.deleteIfExists(file);
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  private void mark() throws IOException {
    Path marker = path.resolve(MARKER);
    try {
      Files.write(marker, MARK, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      // Marked already, whole or by a process that ended while it wrote.
    }
  }

  private boolean isMarked() throws IOException {
    Path marker = path.resolve(MARKER);
    return Files.isRegularFile(marker, LinkOption.NOFOLLOW_LINKS) && isMark(marker);
  }

  /** Whether it holds the mark; a beginning of it is what an end in the middle leaves. */
  private static boolean isMark(Path marker) throws IOException {
    byte[] head = head(marker, MARK.length + 1);
    return head.length <= MARK.length && Arrays.equals(head, Arrays.copyOf(MARK, head.length));
  }

  private static boolean isOwn(Path file, String name) throws IOException {
    BasicFileAttributes is;
    try {
      is = Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      if (!is.isRegularFile()) {
        return false;
      }
      if (name.equals(MARKER)) {
        return isMark(file);
      }
      if (name.equals(LOCK) || name.equals("write.lock")) {
        return is.size() == 0;
      }
      return name.matches(OF_THE_LIBRARY) && beginsLikeAnIndex(file);
    } catch (NoSuchFileException e) {
      // Gone since it was listed: another process writes the index.
      return true;
    }
  }

  /** An end in the middle, of the process or of the power, leaves no bytes or zeros. */
  private static boolean beginsLikeAnIndex(Path file) throws IOException {
    byte[] head = head(file, MAGIC.length);
    return Arrays.equals(head, Arrays.copyOf(MAGIC, head.length))
        || Arrays.equals(head, new byte[head.length]);
  }

  private static byte[] head(Path file, int length) throws IOException {
    try (InputStream in = Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS)) {
      return in.readNBytes(length);
    }
  }

  /** An empty hidden file, by which folders are kept in version control; it is left alone. */
  private static boolean isPlaceholder(Path file, String name) throws IOException {
    try {
      BasicFileAttributes is =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      return name.startsWith(".") && is.isRegularFile() && is.size() == 0;
    } catch (NoSuchFileException e) {
      return true;
    }
  }
}
