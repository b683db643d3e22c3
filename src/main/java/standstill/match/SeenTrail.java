package standstill.match;

import java.util.List;
import standstill.base.Trail;

/**
 * A false trail that was seen.
 *
 * @param trail which
 * @param hits its first lines
 * @param times on how many lines it stands
 */
public record SeenTrail(Trail trail, List<Hit> hits, int times) {
  public SeenTrail {
    hits = List.copyOf(hits);
  }
}
