package standstill.match;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Sign;

/**
 * A sign that was seen.
 *
 * @param fault the fault whose sign it is
 * @param sign the sign
 * @param hits first {@link #MOST_HITS} lines and the last one; empty for a sign that is a missing
 *     milestone
 * @param times on how many lines it stands
 */
public record Seen(Fault fault, Sign sign, List<Hit> hits, int times) {
  /** Lines kept for each sign. */
  public static final int MOST_HITS = 12;

  public Seen {
    hits = List.copyOf(hits);
  }

  /** Place in the boot of the last line on which it stands; it must stand on one. */
  public int last() {
    return hits.get(hits.size() - 1).index();
  }

  /**
   * The sign as a sentence, with the values that were read; the title-like form when the sign has
   * no sentence.
   */
  public String sentence() {
    if (sign.says().isEmpty() || hits.isEmpty()) {
      return "";
    }
    Set<String> sentences = new LinkedHashSet<>();
    for (Hit hit : hits) {
      sentences.add(fill(sign.says(), hit));
    }
    List<String> few = sentences.stream().limit(3).toList();
    String joined = String.join("; ", few);
    return sentences.size() > few.size() ? joined + "; and more of the kind" : joined;
  }

  private static String fill(String template, Hit hit) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < template.length()) {
      int open = template.indexOf('{', at);
      int close = open < 0 ? -1 : template.indexOf('}', open);
      if (close < 0) {
        break;
      }
      out.append(template, at, open);
      out.append(hit.values().getOrDefault(template.substring(open + 1, close), "(not read)"));
      at = close + 1;
    }
    return out.append(template.substring(at)).toString();
  }
}
