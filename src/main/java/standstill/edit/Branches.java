package standstill.edit;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.RefUpdate;

/**
 * The references of proposals. An open one is a branch; one that came to an end is kept outside of
 * the branches, so that its number isn't given again and the list of branches stays short.
 */
final class Branches {
  /** Where a proposal's reference stands. */
  enum Space {
    /** Its last step. */
    OPEN("refs/heads/edit/"),
    /** The merge that brought it into the base. */
    MERGED("refs/standstill/merged/"),
    /** Its last step. */
    TAKEN_BACK("refs/standstill/taken-back/");

    private final String prefix;

    Space(String prefix) {
      this.prefix = prefix;
    }

    String ref(String id) {
      return prefix + id;
    }
  }

  /** Where a proposal was found. */
  record Found(Space space, ObjectId at) {}

  private static final int LONGEST_ID = 120;

  private final GitBase git;
  private final Journal journal;

  Branches(GitBase git, Journal journal) {
    this.git = git;
    this.journal = journal;
  }

  /** An id names a reference; nothing else gets through to git. */
  static boolean isId(String id) {
    int slash = id.indexOf('/');
    return slash > 0
        && slash == id.lastIndexOf('/')
        && slash < id.length() - 1
        && id.length() <= LONGEST_ID
        && id.chars()
            .allMatch(
                c -> c == '-' || c == '/' || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'));
  }

  /** All proposals of a space by id. */
  Map<String, ObjectId> all(Space space) throws IOException {
    Map<String, ObjectId> byId = new TreeMap<>();
    for (Ref ref : git.repository().getRefDatabase().getRefsByPrefix(space.prefix)) {
      String id = ref.getName().substring(space.prefix.length());
      ObjectId at = ref.getObjectId();
      if (isId(id) && at != null) {
        byId.put(id, at);
      }
    }
    return byId;
  }

  /**
   * Where a proposal stands. One that has come to an end may still have its branch for a moment.
   */
  Optional<Found> find(String id) throws IOException {
    if (!isId(id)) {
      return Optional.empty();
    }
    for (Space space : List.of(Space.MERGED, Space.TAKEN_BACK, Space.OPEN)) {
      Ref ref = git.repository().exactRef(space.ref(id));
      ObjectId at = ref == null ? null : ref.getObjectId();
      if (at != null) {
        return Optional.of(new Found(space, at));
      }
    }
    return Optional.empty();
  }

  /** What the ids of a person's proposals on an entry begin with. */
  static String stem(String who, EntryName entry) {
    return who + "/" + entry.id() + "-";
  }

  /** An id that no proposal has had. */
  String freeId(String who, EntryName entry) throws IOException {
    Set<String> taken = new HashSet<>();
    for (Space space : Space.values()) {
      taken.addAll(all(space).keySet());
    }
    String stem = stem(who, entry);
    int number = 1;
    while (taken.contains(stem + number)) {
      number++;
    }
    return stem + number;
  }

  /** Makes a reference, or moves it; refuses when it doesn't stand where it is moved from. */
  void write(Space space, String id, ObjectId from, ObjectId to) throws IOException, Refused {
    String name = space.ref(id);
    journal.begin(List.of(name), ObjectId.zeroId(), ObjectId.zeroId());
    boolean moved = move(name, from, to, "edit");
    journal.done();
    if (!moved) {
      throw new Refused("Somebody else changed this at the same moment. Look at it again.");
    }
  }

  /** Moves a reference in one step; false when it does not stand where it is moved from. */
  boolean move(String name, ObjectId from, ObjectId to, String why) throws IOException {
    RefUpdate update = git.repository().updateRef(name);
    update.setExpectedOldObjectId(from);
    update.setNewObjectId(to);
    update.setRefLogMessage("standstill: " + why, false);
    RefUpdate.Result result = update.update();
    return switch (result) {
      case NEW, FAST_FORWARD -> true;
      case LOCK_FAILURE, REJECTED -> false;
      default -> throw new IOException(name + ": " + result);
    };
  }

  /** Takes the branch of a proposal away that has come to an end. */
  void close(String id, ObjectId at) throws IOException {
    String name = Space.OPEN.ref(id);
    journal.begin(List.of(name), ObjectId.zeroId(), ObjectId.zeroId());
    RefUpdate update = git.repository().updateRef(name);
    update.setExpectedOldObjectId(at);
    update.setForceUpdate(true);
    update.delete();
    journal.done();
  }
}
