package standstill.log;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Example;
import standstill.base.Family;

/**
 * Tells which family of kernels a text comes from, or why it is no boot log.
 *
 * <p>Each family's own recognisers are counted over the text; the most hits win. The lines of what
 * a family includes, such as the firmware and loaders of every PC, count for it as soon as it has
 * one of its own; a part is the answer only where no family that includes it is recognised. Lines
 * that several families print decide only where no line of one family stands. A long text is
 * sampled, its beginning and end in full: a log shows what it is everywhere. A literal that every
 * match needs is looked for before the pattern is run, which saves time and never changes the
 * answer.
 */
final class Recogniser {
  private static final int SAMPLE = 900;
  private static final int LARGE_SAMPLE = 6_000;
  private static final int LONGEST = 1_000;

  private final List<Family> families;

  Recogniser(List<Family> families) {
    this.families = List.copyOf(families);
  }

  /**
   * What was found.
   *
   * @param family the most specific family with the most hits, or empty
   * @param hits its hits in the sample, with those of the families that it includes
   */
  record Finding(String family, int hits) {}

  Finding look(List<Entry> entries) {
    Finding finding = look(entries, SAMPLE);
    return finding.hits() > 0 || entries.size() <= SAMPLE ? finding : look(entries, LARGE_SAMPLE);
  }

  private Finding look(List<Entry> entries, int sample) {
    List<Entry> sampled = sampled(entries, sample);
    Map<String, Integer> sure = new HashMap<>();
    Map<String, Integer> all = new HashMap<>();
    for (Family family : families) {
      BitSet own = hits(family.recognise(), sampled);
      sure.put(family.id(), own.cardinality());
      own.or(hits(family.mayBe(), sampled));
      all.put(family.id(), own.cardinality());
    }
    return most(sure)
        .or(() -> most(all))
        .map(family -> new Finding(family.id(), sum(family, all)))
        .orElse(new Finding("", 0));
  }

  /**
   * Of the families with a line of their own the one with the most lines, its parts' among them. So
   * a family wins from its own parts, and rivals with the same parts are compared by their own.
   */
  private Optional<Family> most(Map<String, Integer> hits) {
    Family best = null;
    int most = 0;
    for (Family family : families) {
      int sum = hits.getOrDefault(family.id(), 0) > 0 ? sum(family, hits) : 0;
      boolean whole = best != null && family.include().contains(best.id());
      if (sum > most || (sum == most && whole)) {
        best = family;
        most = sum;
      }
    }
    return Optional.ofNullable(best);
  }

  private static int sum(Family family, Map<String, Integer> hits) {
    return hits.getOrDefault(family.id(), 0)
        + family.include().stream().mapToInt(id -> hits.getOrDefault(id, 0)).sum();
  }

  private static List<Entry> sampled(List<Entry> entries, int sample) {
    List<Entry> sampled = new ArrayList<>(Math.min(entries.size(), 2 * sample));
    int count = entries.size();
    int third = sample / 3;
    int step = Math.max(1, (count - 2 * third) / third);
    for (int i = 0; i < count; i++) {
      if (i < third || i >= count - third || i % step == 0) {
        sampled.add(entries.get(i));
      }
    }
    return sampled;
  }

  private static BitSet hits(List<Example> recognisers, List<Entry> entries) {
    Example[] examples = recognisers.toArray(new Example[0]);
    BitSet hits = new BitSet(entries.size());
    for (int i = 0; i < entries.size(); i++) {
      hits.set(i, hit(examples, entries.get(i)));
    }
    return hits;
  }

  /** Whether a line is recognised; the example that did it goes to the front, lines being alike. */
  private static boolean hit(Example[] examples, Entry entry) {
    String text = bounded(entry.piece().text());
    return hit(examples, text)
        || (entry.prefix().isPresent() && hit(examples, bounded(entry.message())));
  }

  private static boolean hit(Example[] examples, String text) {
    for (int i = 0; i < examples.length; i++) {
      Example example = examples[i];
      if (mayMatch(example, text) && example.line().foundIn(text)) {
        System.arraycopy(examples, 0, examples, 1, i);
        examples[0] = example;
        return true;
      }
    }
    return false;
  }

  static String bounded(String text) {
    return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
  }

  static boolean mayMatch(Example example, String text) {
    List<String> literals = example.line().literals();
    if (literals.isEmpty()) {
      return true;
    }
    for (String literal : literals) {
      if (text.contains(literal)) {
        return true;
      }
    }
    return false;
  }
}
