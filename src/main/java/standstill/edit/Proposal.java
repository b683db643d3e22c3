package standstill.edit;

import java.time.Instant;
import java.util.List;
import java.util.Set;

/**
 * A change of one entry that somebody put forward.
 *
 * @param id {@code <author>/<entry>-<number>}
 * @param author who put it forward
 * @param entry the file that it changes
 * @param tip its last commit: what a second person looks at and approves
 * @param before the entry's text where the proposal set out from; empty for a new entry
 * @param text the proposed text
 * @param reason why, in the author's words
 * @param standing where it stands
 * @param since when its last step was taken
 * @param writers all who wrote on its text; none of them can approve it
 * @param steps what happened to it, oldest first
 */
public record Proposal(
    String id,
    String author,
    EntryName entry,
    String tip,
    String before,
    String text,
    String reason,
    Standing standing,
    Instant since,
    Set<String> writers,
    List<Step> steps) {
  public Proposal {
    writers = Set.copyOf(writers);
    steps = List.copyOf(steps);
  }

  /** Where a proposal stands. */
  public enum Standing {
    /** It waits for a second person. */
    WAITING("waiting"),
    /** It waits, and the entry was changed since in the same place. */
    CONFLICT("conflict"),
    /** A second person sent it back to its author. */
    SENT_BACK("sent-back"),
    /** Its author took it back. */
    TAKEN_BACK("taken-back"),
    /** It is in the base. */
    MERGED("merged");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    /** The word in commits and addresses. */
    public String word() {
      return word;
    }

    /** Whether somebody has still to do something about it. */
    public boolean isOpen() {
      return this == WAITING || this == CONFLICT || this == SENT_BACK;
    }
  }

  /**
   * Something that happened to a proposal.
   *
   * @param who did it
   * @param when it was
   * @param what in words
   * @param why what the person wrote; empty when nothing
   */
  public record Step(String who, Instant when, String what, String why) {}

  /** A new entry has no text before. */
  public boolean isNew() {
    return before.isEmpty();
  }
}
