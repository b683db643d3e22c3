package standstill.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;

/**
 * Finds what a request asks for where it was done before: somebody whose disk was full, or whose
 * answer was lost, asks for the same again and must neither do it twice nor be refused.
 */
final class Repeated {
  private final GitBase git;
  private final Reading reading;
  private final Branches branches;

  Repeated(GitBase git, Reading reading, Branches branches) {
    this.git = git;
    this.reading = reading;
    this.branches = branches;
  }

  /** The open proposal of the same change by the same person from the same commit. */
  Optional<Proposal> proposed(String who, EntryName entry, String from, String text, String message)
      throws IOException, Refused {
    for (Proposal own : own(who, entry)) {
      if (own.text().equals(text) && isStep(own.tip(), from, who, message)) {
        return Optional.of(own);
      }
    }
    return Optional.empty();
  }

  /** The same change for the same reason that waits already, from whatever commit. */
  Optional<Proposal> waiting(String who, EntryName entry, String text, String reason)
      throws IOException, Refused {
    return own(who, entry).stream()
        .filter(p -> p.standing() == Proposal.Standing.WAITING)
        .filter(p -> p.entry().equals(entry) && p.text().equals(text))
        .filter(p -> p.reason().equals(reason))
        .findFirst();
  }

  /** The open proposals of a person on an entry. */
  private List<Proposal> own(String who, EntryName entry) throws IOException, Refused {
    List<Proposal> own = new ArrayList<>();
    for (String id : branches.all(Branches.Space.OPEN).keySet()) {
      if (id.startsWith(Branches.stem(who, entry))) {
        reading.proposal(id).ifPresent(own::add);
      }
    }
    return own;
  }

  /** The proposal with this very step taken from the tip that the person has seen. */
  Optional<Proposal> stepped(Proposal now, String tip, String who, String text, String message)
      throws IOException {
    boolean same = now.standing().isOpen() && now.text().equals(text);
    return same && isStep(now.tip(), tip, who, message) ? Optional.of(now) : Optional.empty();
  }

  /** The proposal that came to its end by this person's deed at this tip. */
  Optional<Proposal> ended(String id, String tip, String who, Proposal.Standing end)
      throws IOException, Refused {
    return reading
        .proposal(id)
        .filter(p -> p.standing() == end && p.tip().equals(tip))
        .filter(p -> last(p.steps()).who().equals(who));
  }

  /** The proposal that this person merged at this tip, put away already or not yet. */
  Optional<Proposal> approved(String id, String tip, String who) throws IOException, Refused {
    Optional<Proposal> put = ended(id, tip, who, Proposal.Standing.MERGED);
    if (put.isPresent() || !ObjectId.isId(tip)) {
      return put;
    }
    ObjectId at = ObjectId.fromString(tip);
    Optional<Branches.Found> open = branches.find(id).filter(found -> found.at().equals(at));
    if (open.isEmpty()) {
      return put;
    }
    ObjectId merge = reading.mergesOf(Set.of(at)).get(at);
    if (merge == null) {
      return put;
    }
    try (RevWalk walk = new RevWalk(git.repository())) {
      boolean same = Messages.approvedBy(walk.parseCommit(merge)).equals(Optional.of(who));
      return same ? reading.proposal(id) : put;
    }
  }

  private static Proposal.Step last(List<Proposal.Step> steps) {
    return steps.get(steps.size() - 1);
  }

  private boolean isStep(String commit, String parent, String who, String message)
      throws IOException {
    try (RevWalk walk = new RevWalk(git.repository())) {
      RevCommit step = walk.parseCommit(ObjectId.fromString(commit));
      return step.getParentCount() > 0
          && step.getParent(0).name().equals(parent)
          && step.getAuthorIdent().getName().equals(who)
          && step.getFullMessage().equals(message);
    }
  }
}
