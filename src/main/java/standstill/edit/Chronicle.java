package standstill.edit;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;

/**
 * What changed an entry, read out of the repository around a base and nothing else: it takes no
 * lock, writes no file and has no way to. Thread-safe.
 */
public final class Chronicle implements Closeable {
  private static final int MOST = 10;

  private final GitBase git;
  private final Duration longest;

  private Chronicle(GitBase git, Duration longest) {
    this.git = git;
    this.longest = longest;
  }

  /**
   * The chronicle of a base's folder; empty when the folder lies in no git work tree.
   *
   * @param longest how long one history may take to read
   */
  public static Optional<Chronicle> of(Path folder, Duration longest) {
    try {
      return Optional.of(new Chronicle(GitBase.around(folder), longest));
    } catch (IOException | Refused e) {
      // A page without a history is as good a page.
      return Optional.empty();
    }
  }

  /**
   * The last commits in which an entry's file changed, newest first, ten at the most. Merges that
   * only brought a change in are left out. A repository too large to be read in time gives those
   * that were found by then; one that can't be read gives none.
   */
  public List<Version> of(EntryName entry) {
    long end = System.nanoTime() + longest.toNanos();
    List<Version> versions = new ArrayList<>();
    try (RevWalk walk = new RevWalk(git.repository())) {
      ObjectId head = git.repository().resolve(Constants.HEAD);
      if (head == null) {
        return versions;
      }
      String path = git.inTree(entry);
      walk.markStart(walk.parseCommit(head));
      for (RevCommit commit = walk.next();
          commit != null && versions.size() < MOST && System.nanoTime() < end;
          commit = walk.next()) {
        if (changes(commit, path)) {
          versions.add(Messages.version(commit, Messages.approvedBy(commit).orElse("")));
        }
      }
    } catch (IOException e) {
      return versions;
    }
    return versions;
  }

  /** Whether a file is other in a commit than in every commit that it followed. */
  private boolean changes(RevCommit commit, String path) throws IOException {
    Optional<ObjectId> now = git.blob(commit, path);
    for (RevCommit parent : commit.getParents()) {
      if (git.blob(parent, path).equals(now)) {
        return false;
      }
    }
    return commit.getParentCount() > 0 || now.isPresent();
  }

  @Override
  public void close() {
    git.close();
  }
}
