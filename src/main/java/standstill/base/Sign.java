package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Position;

/**
 * What a fault leaves in a log.
 *
 * @param id unique in the base, for ever: the fault's id, a slash, the sign's own id
 * @param form what has to be in the log
 * @param shows P(sign | the fault)
 * @param elsewhere P(sign | a boot with another cause, or none), as written
 * @param rivals P(sign | another cause of the same stop), as written; the same as {@code elsewhere}
 *     when the entry does not say
 * @param event signs of one fault with the same event are one event; the sign's id when it stands
 *     alone
 * @param says a sentence with {@code {group}} places for captured values, or empty
 * @param seen texts that it must match
 * @param unlike near misses that it must not match
 * @param printedBy the program that prints the text, where the message check can't fetch it
 * @param span versions of the program that prints it so
 * @param where its place in the fault's file
 */
public record Sign(
    String id,
    SignForm form,
    Chance shows,
    Chance elsewhere,
    Chance rivals,
    String event,
    String says,
    List<String> seen,
    List<String> unlike,
    Optional<PrintedBy> printedBy,
    Span span,
    Position where) {
  public Sign {
    seen = List.copyOf(seen);
    unlike = List.copyOf(unlike);
  }

  /** By the id alone: the ids of a base are unique, and entries are keys of maps all the time. */
  @Override
  public int hashCode() {
    return id.hashCode();
  }

  /**
   * Who prints a text that no fetched package holds.
   *
   * @param program the program
   * @param reason why it can't be checked
   */
  public record PrintedBy(String program, String reason) {}
}
