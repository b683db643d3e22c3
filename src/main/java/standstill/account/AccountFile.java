package standstill.account;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Changes the file of accounts: one after the other, also when several programs do, and so that at
 * any moment it has its old text or its new one, even after a power cut.
 */
final class AccountFile {
  /** A lock on a file is a program's; within the program it takes another one. */
  private static final Object IN_THIS_PROGRAM = new Object();

  private AccountFile() {}

  /** What the file is to hold; empty when it stays as it is. */
  @FunctionalInterface
  interface Change {
    Optional<String> text() throws IOException;
  }

  /** Changes a file while nobody else does; false when it was left as it is. */
  static boolean change(Path file, Change change) throws IOException {
    // A link stays a link: what it leads to is changed.
    Path real = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
    String name = Objects.requireNonNull(real.getFileName()).toString();
    synchronized (IN_THIS_PROGRAM) {
      try (FileChannel lock =
              FileChannel.open(
                  real.resolveSibling("." + name + ".lock"),
                  Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
                  forTheOwnerAlone(real));
          FileLock held = lock.lock()) {
        Optional<String> text = change.text();
        if (text.isPresent() && held.isValid()) {
          write(real, real.resolveSibling(name + ".part"), text.get());
        }
        return text.isPresent();
      }
    }
  }

  private static void write(Path file, Path part, String text) throws IOException {
    Files.deleteIfExists(part);
    Set<? extends OpenOption> fresh =
        Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try (FileChannel out = FileChannel.open(part, fresh, forTheOwnerAlone(file))) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
    Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static FileAttribute<?>[] forTheOwnerAlone(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
  }
}
