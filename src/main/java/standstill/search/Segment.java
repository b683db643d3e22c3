package standstill.search;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece of a text; a text in pieces says which of its words matched without any markup.
 *
 * @param text the piece
 * @param matched whether it matched
 */
public record Segment(String text, boolean matched) {

  /** A text of which nothing matched. */
  public static List<Segment> plain(String text) {
    return List.of(new Segment(text, false));
  }

  /** The pieces put together again. */
  public static String join(List<Segment> segments) {
    StringBuilder out = new StringBuilder();
    segments.forEach(s -> out.append(s.text()));
    return out.toString();
  }

  /** Cuts a text at spans of characters, which are in order and don't overlap. */
  static List<Segment> cut(String text, List<int[]> spans) {
    List<Segment> segments = new ArrayList<>();
    int at = 0;
    for (int[] span : spans) {
      if (span[0] > at) {
        segments.add(new Segment(text.substring(at, span[0]), false));
      }
      segments.add(new Segment(text.substring(span[0], span[1]), true));
      at = span[1];
    }
    if (at < text.length()) {
      segments.add(new Segment(text.substring(at), false));
    }
    return segments;
  }
}
