package standstill.search;

import java.util.List;

/**
 * An entry that was found.
 *
 * @param kind what it is
 * @param id its id
 * @param title its title, with the words that matched
 * @param bySign whether one of its signs matches the searched text as a line of a log
 * @param where what part of the entry the excerpt is from
 * @param excerpt the part of the entry that fits best, with the words that matched
 */
public record Found(
    Kind kind,
    String id,
    List<Segment> title,
    boolean bySign,
    String where,
    List<Segment> excerpt) {
  public Found {
    title = List.copyOf(title);
    excerpt = List.copyOf(excerpt);
  }
}
