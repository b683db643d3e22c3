package standstill.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jgit.dircache.DirCache;
import org.eclipse.jgit.dircache.DirCacheEditor;
import org.eclipse.jgit.dircache.DirCacheEntry;
import org.eclipse.jgit.errors.LockFailedException;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ObjectInserter;
import org.eclipse.jgit.lib.RepositoryState;
import org.jspecify.annotations.Nullable;

/**
 * Brings index and work tree after the branch when it moves.
 *
 * <p>Order: the journal notes the move; the index is locked; every file concerned must be as the
 * old commit has it, in the index and on disk, else nothing is done; the branch moves in one step;
 * files are replaced one by one, each in one step; the index is replaced in one step. After a
 * sudden end the journal tells the next start which move was under way, and the files that still
 * have the old content get the new one. Files with any third content are somebody's own work and
 * stay.
 */
final class WorkTree {
  private static final int LOCK_TRIES = 20;
  private static final Duration BETWEEN_TRIES = Duration.ofMillis(50);

  /** A lock file that a running git command holds is gone or changed after that time. */
  private static final Duration SURELY_STALE = Duration.ofSeconds(2);

  private final GitBase git;
  private final Journal journal;

  WorkTree(GitBase git, Journal journal) {
    this.git = git;
    this.journal = journal;
  }

  /** Moves the branch; false when it no longer stands where it is to be moved from. */
  interface Step {
    boolean take() throws IOException, Refused;
  }

  /**
   * Moves the branch, and files and index after it.
   *
   * @return false when the branch had moved meanwhile; nothing was changed then
   * @throws Refused when somebody's own changes are in the way
   */
  boolean move(ObjectId from, ObjectId to, List<String> refs, Step step)
      throws IOException, Refused {
    if (git.repository().getRepositoryState() != RepositoryState.SAFE) {
      throw new Refused(
          "Somebody is in the middle of a merge or a rebase in the base's work tree. Let them"
              + " finish it first; nothing was changed.");
    }
    Set<String> paths = git.changed(git.treeOf(from), git.treeOf(to));
    // Before the lock is taken: a lock file without a journal would be taken for somebody else's.
    journal.begin(refs, from, to);
    boolean moved;
    try {
      moved = move(from, to, paths, step);
    } catch (Refused e) {
      journal.done();
      throw e;
    }
    journal.done();
    return moved;
  }

  private boolean move(ObjectId from, ObjectId to, Set<String> paths, Step step)
      throws IOException, Refused {
    DirCache index = lockIndex();
    try {
      for (String path : paths) {
        untouched(index, path, git.blob(from, path));
      }
      if (!step.take()) {
        return false;
      }
      bring(index, from, to, paths);
      return true;
    } finally {
      index.unlock();
    }
  }

  /** Finishes what a sudden end left half done; does nothing when there is nothing of ours. */
  void recover() throws IOException, Refused {
    Optional<Journal.Begun> left = journal.left();
    if (left.isEmpty()) {
      return;
    }
    Journal.Begun begun = left.get();
    freeLocks(begun);
    if (begun.moves() && git.head().equals(begun.to())) {
      DirCache index = lockIndex();
      try {
        bring(
            index,
            begun.from(),
            begun.to(),
            git.changed(git.treeOf(begun.from()), git.treeOf(begun.to())));
      } finally {
        index.unlock();
      }
    }
    journal.done();
  }

  private DirCache lockIndex() throws IOException, Refused {
    for (int i = 0; i < LOCK_TRIES; i++) {
      try {
        return git.repository().lockDirCache();
      } catch (LockFailedException e) {
        sleep(BETWEEN_TRIES);
      }
    }
    throw new Refused(
        "A git command is at work in the base's work tree (index.lock is there). Try again when it"
            + " has ended; nothing was changed.");
  }

  private void untouched(DirCache index, String path, Optional<ObjectId> content)
      throws IOException, Refused {
    Optional<ObjectId> onDisk = onDisk(path);
    @Nullable DirCacheEntry entry = index.getEntry(path);
    boolean staged =
        content.isPresent() ? !holds(entry, content.get()) : index.findEntry(path) >= 0;
    if (staged || !onDisk.equals(content)) {
      throw new Refused(
          "The file "
              + path
              + " has changes in the work tree that are not committed. Commit them or take them"
              + " back first; nothing was changed.");
    }
  }

  private static boolean holds(@Nullable DirCacheEntry entry, ObjectId content) {
    return entry != null
        && entry.getStage() == DirCacheEntry.STAGE_0
        && content.equals(entry.getObjectId());
  }

  /** The id of a file's content; empty when nothing is there. */
  private Optional<ObjectId> onDisk(String path) throws IOException {
    Path file = file(path);
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.of(ObjectId.zeroId());
    }
    try (ObjectInserter.Formatter formatter = new ObjectInserter.Formatter()) {
      return Optional.of(formatter.idFor(Constants.OBJ_BLOB, Files.readAllBytes(file)));
    }
  }

  private Path file(String path) {
    return git.repository().getWorkTree().toPath().resolve(path);
  }

  private void bring(DirCache index, ObjectId from, ObjectId to, Set<String> paths)
      throws IOException {
    DirCacheEditor editor = index.editor();
    for (String path : paths) {
      Optional<ObjectId> old = git.blob(from, path);
      ObjectId now = git.blob(to, path).orElseThrow(() -> new IOException("no file " + path));
      Path file = file(path);
      Files.deleteIfExists(Durable.part(file));
      Optional<ObjectId> onDisk = onDisk(path);
      if (onDisk.equals(old)) {
        Files.createDirectories(Objects.requireNonNull(file.getParent()));
        Durable.write(file, git.bytes(now));
        onDisk = Optional.of(now);
      }
      boolean follows = onDisk.equals(Optional.of(now));
      @Nullable DirCacheEntry entry = index.getEntry(path);
      if (entry == null ? old.isEmpty() : old.isPresent() && holds(entry, old.get())) {
        editor.add(
            new DirCacheEditor.PathEdit(path) {
              @Override
              public void apply(DirCacheEntry at) {
                at.setFileMode(FileMode.REGULAR_FILE);
                at.setObjectId(now);
                at.setLength(follows ? file.toFile().length() : 0);
                at.setLastModified(
                    follows ? Instant.ofEpochMilli(file.toFile().lastModified()) : Instant.EPOCH);
              }
            });
      }
    }
    if (!editor.commit()) {
      throw new IOException("the index could not be written");
    }
  }

  /**
   * Takes away lock files that our own sudden end left: those named by the journal and made after
   * it. A git command's lock that was in our way is older.
   */
  private void freeLocks(Journal.Begun begun) throws IOException {
    Path common = git.repository().getCommonDirectory().toPath();
    List<Path> locks = new ArrayList<>();
    begun.refs().forEach(ref -> locks.add(common.resolve(ref + ".lock")));
    locks.add(common.resolve("packed-refs.lock"));
    locks.add(git.repository().getDirectory().toPath().resolve("HEAD.lock"));
    if (begun.moves()) {
      locks.add(git.repository().getIndexFile().toPath().resolveSibling("index.lock"));
    }
    List<Path> there = new ArrayList<>();
    List<FileTime> times = new ArrayList<>();
    for (Path lock : locks) {
      if (Files.exists(lock) && Files.getLastModifiedTime(lock).compareTo(begun.at()) >= 0) {
        there.add(lock);
        times.add(Files.getLastModifiedTime(lock));
      }
    }
    if (there.isEmpty()) {
      return;
    }
    sleep(SURELY_STALE);
    for (int i = 0; i < there.size(); i++) {
      try {
        if (Files.getLastModifiedTime(there.get(i)).equals(times.get(i))) {
          Files.delete(there.get(i));
        }
      } catch (NoSuchFileException e) {
        // A running git command held it, and is done.
      }
    }
  }

  private static void sleep(Duration time) throws IOException {
    try {
      Thread.sleep(time.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }
}
