package standstill.search;

import java.util.List;
import java.util.Map;

/**
 * What a search found.
 *
 * @param query what was searched for
 * @param found entries, best first
 * @param total how many there are, of which {@code found} may be the first
 * @param counts how many there are of each kind, whatever kinds were asked for
 * @param read words that are in no entry, and the nearest ones that were searched for in their
 *     place
 * @param nearest whether nothing was found and these are the entries with the most similar titles
 */
public record Results(
    String query,
    List<Found> found,
    int total,
    Map<Kind, Integer> counts,
    List<Reading> read,
    boolean nearest) {
  public Results {
    found = List.copyOf(found);
    counts = Map.copyOf(counts);
    read = List.copyOf(read);
  }

  /**
   * A word that was taken for another.
   *
   * @param typed the word
   * @param as the nearest word in the base
   */
  public record Reading(String typed, String as) {}
}
