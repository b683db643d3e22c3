package standstill.edit;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevSort;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.treewalk.filter.AndTreeFilter;
import org.eclipse.jgit.treewalk.filter.PathFilter;
import org.eclipse.jgit.treewalk.filter.TreeFilter;

/** Reads proposals and histories out of commits. */
final class Reading {
  private static final int MOST_STEPS = 200;
  private static final int MOST_VERSIONS = 200;

  private final GitBase git;
  private final Branches branches;

  Reading(GitBase git, Branches branches) {
    this.git = git;
    this.branches = branches;
  }

  /**
   * The proposal of an id; empty when there is none, or a branch of that name is something else.
   */
  Optional<Proposal> proposal(String id) throws IOException, Refused {
    Optional<Branches.Found> found = branches.find(id);
    return found.isEmpty() ? Optional.empty() : proposal(id, found.get());
  }

  private Optional<Proposal> proposal(String id, Branches.Found found) throws IOException, Refused {
    try (RevWalk walk = new RevWalk(git.repository())) {
      RevCommit last = walk.parseCommit(found.at());
      boolean merged = found.space() == Branches.Space.MERGED;
      if (merged && last.getParentCount() != 2) {
        return Optional.empty();
      }
      RevCommit tip = walk.parseCommit(merged ? last.getParent(1) : last);
      Optional<EntryName> entry = Messages.entry(tip);
      if (entry.isEmpty()) {
        return Optional.empty();
      }
      String author = id.substring(0, id.indexOf('/'));
      ObjectId base = merged ? last.getParent(0).getId() : git.head();
      Instant since = last.getCommitterIdent().getWhenAsInstant();
      List<Proposal.Step> steps = new ArrayList<>();
      Set<String> writers = new LinkedHashSet<>();
      String reason = steps(walk, tip, base, steps, writers);
      if (merged) {
        String who = Messages.approvedBy(last).orElse(last.getAuthorIdent().getName());
        steps.add(new Proposal.Step(who, since, "approved it", ""));
      } else if (found.space() == Branches.Space.TAKEN_BACK) {
        steps.add(new Proposal.Step(author, since, "took it back", ""));
      }
      ObjectId common = git.common(tip, base).orElse(base);
      return Optional.of(
          new Proposal(
              id,
              author,
              entry.get(),
              tip.name(),
              git.text(common, entry.get()).orElse(""),
              git.text(tip, entry.get()).orElse(""),
              reason,
              standing(found.space(), tip, base),
              since,
              writers,
              steps));
    }
  }

  /**
   * Reads the steps from the base to a tip; returns the reason of the last that changed the text.
   */
  private static String steps(
      RevWalk walk, RevCommit tip, ObjectId base, List<Proposal.Step> steps, Set<String> writers)
      throws IOException {
    String reason = "";
    walk.reset();
    walk.sort(RevSort.TOPO);
    walk.sort(RevSort.REVERSE, true);
    walk.markStart(tip);
    walk.markUninteresting(walk.parseCommit(base));
    for (RevCommit commit : walk) {
      if (steps.size() >= MOST_STEPS) {
        break;
      }
      String who = commit.getAuthorIdent().getName();
      String body = Messages.body(commit);
      boolean text = !Messages.standing(commit).equals(Optional.of(Proposal.Standing.SENT_BACK));
      if (text) {
        writers.add(who);
        reason = body;
      }
      steps.add(
          new Proposal.Step(
              who, commit.getAuthorIdent().getWhenAsInstant(), Messages.deed(commit), body));
    }
    return reason;
  }

  private Proposal.Standing standing(Branches.Space space, RevCommit tip, ObjectId base)
      throws IOException {
    return switch (space) {
      case MERGED -> Proposal.Standing.MERGED;
      case TAKEN_BACK -> Proposal.Standing.TAKEN_BACK;
      case OPEN -> {
        Proposal.Standing said = Messages.standing(tip).orElse(Proposal.Standing.WAITING);
        yield said == Proposal.Standing.WAITING && git.merge(base, tip).isEmpty()
            ? Proposal.Standing.CONFLICT
            : said;
      }
    };
  }

  /** When each proposal of a space took its last step. */
  Map<String, Instant> times(Branches.Space space) throws IOException {
    Map<String, Instant> times = new HashMap<>();
    try (RevWalk walk = new RevWalk(git.repository())) {
      for (Map.Entry<String, ObjectId> each : branches.all(space).entrySet()) {
        times.put(
            each.getKey(),
            walk.parseCommit(each.getValue()).getCommitterIdent().getWhenAsInstant());
      }
    }
    return times;
  }

  /** The texts that an entry had, newest first. */
  List<Version> history(EntryName entry) throws IOException, Refused {
    Map<String, String> approvers = approvers();
    List<Version> versions = new ArrayList<>();
    try (RevWalk walk = new RevWalk(git.repository())) {
      walk.setTreeFilter(
          AndTreeFilter.create(PathFilter.create(git.inTree(entry)), TreeFilter.ANY_DIFF));
      // Commits of one second come in any order of time.
      walk.sort(RevSort.TOPO);
      walk.markStart(walk.parseCommit(git.head()));
      for (RevCommit commit : walk) {
        if (versions.size() >= MOST_VERSIONS) {
          break;
        }
        String approver =
            Messages.approvedBy(commit).orElseGet(() -> approvers.getOrDefault(commit.name(), ""));
        versions.add(Messages.version(commit, approver));
      }
    }
    return versions;
  }

  /** For the last commit of each merged proposal, who approved it. */
  private Map<String, String> approvers() throws IOException {
    Map<String, String> approvers = new HashMap<>();
    try (RevWalk walk = new RevWalk(git.repository())) {
      for (ObjectId at : branches.all(Branches.Space.MERGED).values()) {
        RevCommit merge = walk.parseCommit(at);
        if (merge.getParentCount() == 2) {
          Messages.approvedBy(merge)
              .ifPresent(who -> approvers.put(merge.getParent(1).name(), who));
        }
      }
    }
    return approvers;
  }

  /** For each given commit that the branch has merged, the merge that brought it in. */
  Map<ObjectId, ObjectId> mergesOf(Set<ObjectId> tips) throws IOException, Refused {
    Map<ObjectId, ObjectId> merges = new HashMap<>();
    try (RevWalk walk = new RevWalk(git.repository())) {
      RevCommit head = walk.parseCommit(git.head());
      Set<ObjectId> inside = new LinkedHashSet<>();
      for (ObjectId tip : tips) {
        if (walk.isMergedInto(walk.parseCommit(tip), head)) {
          inside.add(tip.copy());
        }
      }
      if (inside.isEmpty()) {
        return merges;
      }
      walk.reset();
      walk.setFirstParent(true);
      walk.markStart(walk.parseCommit(head));
      for (RevCommit commit : walk) {
        if (commit.getParentCount() == 2 && inside.remove(commit.getParent(1).copy())) {
          merges.put(commit.getParent(1).copy(), commit.copy());
        }
        if (inside.isEmpty()) {
          break;
        }
      }
    }
    return merges;
  }
}
