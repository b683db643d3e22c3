package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Pattern;
import standstill.text.Position;

/**
 * A false trail: lines that look bad and are harmless.
 *
 * @param id name
 * @param title what the lines are, for people
 * @param families ids of the families that print them
 * @param signs the lines
 * @param why why they are harmless
 * @param mattersWhen when they do matter after all
 * @param sources where this comes from
 * @param reviewed when somebody last looked at the entry
 * @param where its file
 */
public record Trail(
    String id,
    String title,
    List<String> families,
    List<TrailSign> signs,
    String why,
    String mattersWhen,
    List<Source> sources,
    Reviewed reviewed,
    Position where) {
  public Trail {
    families = List.copyOf(families);
    signs = List.copyOf(signs);
    sources = List.copyOf(sources);
  }

  /**
   * A line of a false trail.
   *
   * @param id unique in the base, for ever: the trail's id, a slash, the line's own id
   * @param line the pattern
   * @param seen texts that it must match
   * @param unlike near misses
   * @param printedBy the program that prints the text, where the message check can't fetch it
   * @param where its place
   */
  public record TrailSign(
      String id,
      Pattern line,
      List<String> seen,
      List<String> unlike,
      Optional<Sign.PrintedBy> printedBy,
      Position where) {
    public TrailSign {
      seen = List.copyOf(seen);
      unlike = List.copyOf(unlike);
    }
  }
}
