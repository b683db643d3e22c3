package standstill.edit;

import java.util.List;
import java.util.Optional;
import org.eclipse.jgit.revwalk.FooterLine;
import org.eclipse.jgit.revwalk.RevCommit;

/**
 * Commit messages and what is read back out of them. The last paragraph is ours alone, so that
 * nothing that a person writes as a reason can be taken for it.
 */
final class Messages {
  static final int LONGEST_REASON = 2_000;
  private static final int LONGEST_SUBJECT = 68;
  private static final String ENTRY = "Entry";
  private static final String STANDING = "Standing";
  private static final String PROPOSED_BY = "Proposed-by";
  private static final String APPROVED_BY = "Approved-by";

  private Messages() {}

  /** A step of a proposal. */
  static String step(String verb, EntryName entry, String reason, Proposal.Standing standing) {
    return subject(verb + " " + entry.id() + ": " + firstLine(reason))
        + reason
        + "\n\n"
        + ENTRY
        + ": "
        + entry.path()
        + "\n"
        + STANDING
        + ": "
        + standing.word()
        + "\n";
  }

  /** The merge of an approved proposal. */
  static String merge(Proposal proposal, String approver, String measured) {
    return subject("Change " + proposal.entry().id() + ": " + firstLine(proposal.reason()))
        + proposal.reason()
        + (measured.isEmpty() ? "" : "\n\n" + measured)
        + "\n\n"
        + ENTRY
        + ": "
        + proposal.entry().path()
        + "\n"
        + PROPOSED_BY
        + ": "
        + proposal.author()
        + "\n"
        + APPROVED_BY
        + ": "
        + approver
        + "\n";
  }

  private static String subject(String text) {
    return (text.length() <= LONGEST_SUBJECT
            ? text
            : text.substring(0, LONGEST_SUBJECT - 1).strip() + "…")
        + "\n\n";
  }

  static String firstLine(String reason) {
    return reason.lines().findFirst().orElse("").strip();
  }

  /** A reason as it can stand in a commit: one kind of line end, nothing that can't be seen. */
  static String reason(String typed) throws Refused {
    String clean =
        typed
            .replace("\r\n", "\n")
            .replace('\r', '\n')
            .replaceAll("[\\p{Cntrl}&&[^\\n]]", " ")
            .replaceAll("\\n{3,}", "\n\n")
            .strip();
    if (clean.isEmpty()) {
      throw new Refused("There is no reason. Say in a sentence why the change is right.");
    }
    if (clean.length() > LONGEST_REASON) {
      throw new Refused("The reason is longer than " + LONGEST_REASON + " characters.");
    }
    return clean;
  }

  static Optional<EntryName> entry(RevCommit commit) {
    return footer(commit, ENTRY).flatMap(EntryName::of);
  }

  static Optional<Proposal.Standing> standing(RevCommit commit) {
    return footer(commit, STANDING)
        .flatMap(
            word ->
                List.of(Proposal.Standing.values()).stream()
                    .filter(s -> s.word().equals(word))
                    .findFirst());
  }

  static Optional<String> approvedBy(RevCommit commit) {
    return footer(commit, APPROVED_BY);
  }

  /** A commit as a version of an entry. */
  static Version version(RevCommit commit, String approvedBy) {
    String why = entry(commit).isEmpty() ? "" : body(commit);
    return new Version(
        commit.name(),
        commit.getAuthorIdent().getName(),
        commit.getAuthorIdent().getWhenAsInstant(),
        why.isEmpty() ? commit.getShortMessage() : firstLine(why),
        approvedBy);
  }

  /** What a step did, as a person says it. */
  static String deed(RevCommit commit) {
    String subject = commit.getShortMessage();
    if (subject.startsWith("Propose ")) {
      return "proposed it";
    }
    if (subject.startsWith("Settle ")) {
      return "settled the conflict";
    }
    return subject.startsWith("Send back ") ? "sent it back" : "revised it";
  }

  /** What a person wrote as the reason. */
  static String body(RevCommit commit) {
    String message = commit.getFullMessage();
    int start = message.indexOf("\n\n");
    int end = message.stripTrailing().lastIndexOf("\n\n");
    return start >= 0 && end > start ? message.substring(start + 2, end).strip() : "";
  }

  private static Optional<String> footer(RevCommit commit, String key) {
    List<FooterLine> lines = FooterLine.fromMessage(commit.getFullMessage());
    return lines.stream()
        .filter(line -> line.getKey().equals(key))
        .map(FooterLine::getValue)
        .findFirst();
  }
}
