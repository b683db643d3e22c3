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
 * @param only what else has to be in the boot, or must not be, for them to be harmless
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
    List<Proviso> only,
    String why,
    String mattersWhen,
    List<Source> sources,
    Reviewed reviewed,
    Position where) {
  public Trail {
    families = List.copyOf(families);
    signs = List.copyOf(signs);
    only = List.copyOf(only);
    sources = List.copyOf(sources);
  }

  /**
   * Something that has to be in a boot, or must not be, for lines to be harmless. Where its pattern
   * and the line's have groups of the same names, the values have to be the same too.
   *
   * @param form what is looked for
   * @param there whether it has to be there
   * @param seen texts that its pattern must match
   * @param unlike near misses
   */
  public record Proviso(
      SignForm form, boolean there, List<String> seen, List<String> unlike, Position where) {
    public Proviso {
      seen = List.copyOf(seen);
      unlike = List.copyOf(unlike);
    }
  }

  /**
   * A line of a false trail.
   *
   * @param id unique in the base, for ever: the trail's id, a slash, the line's own id
   * @param line the pattern
   * @param seen texts that it must match
   * @param unlike near misses
   * @param printedBy the program that prints the text, where the message check can't fetch it
   * @param span versions of the program that prints it so
   * @param where its place
   */
  public record TrailSign(
      String id,
      Pattern line,
      List<String> seen,
      List<String> unlike,
      Optional<Sign.PrintedBy> printedBy,
      Span span,
      Position where) {
    public TrailSign {
      seen = List.copyOf(seen);
      unlike = List.copyOf(unlike);
    }
  }
}
