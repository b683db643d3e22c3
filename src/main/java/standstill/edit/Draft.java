package standstill.edit;

import java.util.List;

/**
 * A text that somebody works on and has not proposed yet.
 *
 * @param id names it; can't be guessed
 * @param who works on it
 * @param entry the file that it is for
 * @param from the commit that it set out from
 * @param text as it stands
 * @param reason why, as far as it was written
 * @param revises the proposal whose text it will replace, and that proposal's tip; empty for a new
 *     proposal
 * @param notes what could not be done with the text last time
 * @param log a text to try it on, or the address of a pasted log
 */
public record Draft(
    String id,
    String who,
    EntryName entry,
    String from,
    String text,
    String reason,
    String revises,
    List<String> notes,
    String log) {
  public Draft {
    notes = List.copyOf(notes);
  }

  /** The same with another text. */
  public Draft withText(String other, String why, List<String> said) {
    return new Draft(id, who, entry, from, other, why, revises, said, log);
  }

  /** The same with another text to try it on. */
  public Draft withLog(String other) {
    return new Draft(id, who, entry, from, text, reason, revises, notes, other);
  }
}
