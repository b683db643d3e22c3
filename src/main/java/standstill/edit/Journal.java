package standstill.edit;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jgit.lib.ObjectId;
import org.jspecify.annotations.Nullable;

/**
 * What is being written at this moment, on disk before it begins and gone when it is done, so that
 * a start after a sudden end knows what to finish. It also keeps a second program from editing the
 * same repository: the operating system frees that lock when its holder ends in any way.
 */
final class Journal implements Closeable {
  private final Path file;
  private final FileChannel channel;
  private final FileLock held;

  private Journal(Path file, FileChannel channel, FileLock held) {
    this.file = file;
    this.channel = channel;
    this.held = held;
  }

  /**
   * What was begun.
   *
   * @param refs full names of the references to be updated
   * @param from the branch's commit before; the zero id when the branch does not move
   * @param to its commit afterwards
   * @param at when it was noted, by the clock of the file system
   */
  record Begun(List<String> refs, ObjectId from, ObjectId to, FileTime at) {
    boolean moves() {
      return !from.equals(ObjectId.zeroId());
    }
  }

  /**
   * The journal in a repository's own folder.
   *
   * @throws Refused when another program holds it
   */
  static Journal open(Path gitFolder) throws IOException, Refused {
    Path folder = Files.createDirectories(gitFolder.resolve("standstill"));
    FileChannel channel =
        FileChannel.open(
            folder.resolve("held"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    @Nullable FileLock held;
    try {
      held = channel.tryLock();
    } catch (OverlappingFileLockException e) {
      held = null;
    }
    if (held == null) {
      channel.close();
      throw new Refused("Another server edits this repository already. End it first.");
    }
    return new Journal(folder.resolve("begun"), channel, held);
  }

  /** Notes what is about to be written. */
  void begin(List<String> refs, ObjectId from, ObjectId to) throws IOException {
    StringBuilder text = new StringBuilder();
    refs.forEach(ref -> text.append("ref ").append(ref).append('\n'));
    text.append("move ").append(from.name()).append(' ').append(to.name()).append('\n');
    Durable.write(file, text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Notes that all was written. */
  void done() throws IOException {
    Files.deleteIfExists(file);
  }

  /** What was begun and not done. */
  Optional<Begun> left() throws IOException {
    List<String> refs = new ArrayList<>();
    ObjectId from = ObjectId.zeroId();
    ObjectId to = ObjectId.zeroId();
    try {
      for (String line : Files.readAllLines(file)) {
        String[] words = line.split(" ", -1);
        if (words[0].equals("ref") && words.length == 2) {
          refs.add(words[1]);
        } else if (words[0].equals("move") && words.length == 3) {
          from = ObjectId.fromString(words[1]);
          to = ObjectId.fromString(words[2]);
        }
      }
      return Optional.of(new Begun(refs, from, to, Files.getLastModifiedTime(file)));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  @Override
  public void close() throws IOException {
    held.release();
    channel.close();
  }
}
