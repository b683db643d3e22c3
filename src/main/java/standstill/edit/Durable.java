package standstill.edit;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Objects;

/** Writes a file so that at any moment it has its old content or its new one. */
final class Durable {
  private Durable() {}

  /** The file that is written before it takes the place of another. */
  static Path part(Path file) {
    return file.resolveSibling("." + Objects.requireNonNull(file.getFileName()) + ".part");
  }

  /** Replaces a file's content; its folder must be there. */
  static void write(Path file, byte[] content) throws IOException {
    Path part = part(file);
    try {
      fill(part, content);
    } catch (IOException e) {
      // On a full disk the half file would keep the room that the next try needs.
      Files.deleteIfExists(part);
      throw e;
    }
    Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static void fill(Path part, byte[] content) throws IOException {
    try (FileChannel out =
        FileChannel.open(
            part,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      ByteBuffer buffer = ByteBuffer.wrap(content);
      while (buffer.hasRemaining()) {
        out.write(buffer);
      }
      out.force(true);
    }
  }
}
