package standstill.log;

import java.util.List;
import standstill.base.Example;
import standstill.base.Family;

/**
 * Tells which family of kernels a text comes from, or why it is no boot log.
 *
 * <p>Each family's recognisers are counted over the text; the most hits win. A long text is
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
   * @param family the family with the most hits, or empty
   * @param hits its hits in the sample
   */
  record Finding(String family, int hits) {}

  Finding look(List<Entry> entries) {
    Finding finding = look(entries, SAMPLE);
    return finding.hits() > 0 || entries.size() <= SAMPLE ? finding : look(entries, LARGE_SAMPLE);
  }

  private Finding look(List<Entry> entries, int sample) {
    Finding best = new Finding("", 0);
    for (Family family : families) {
      Example[] examples = family.recognise().toArray(new Example[0]);
      int hits = 0;
      int count = entries.size();
      int third = sample / 3;
      int step = Math.max(1, (count - 2 * third) / third);
      for (int i = 0; i < count; i++) {
        boolean edge = i < third || i >= count - third;
        if ((edge || i % step == 0) && hit(examples, entries.get(i))) {
          hits++;
        }
      }
      if (hits > best.hits()) {
        best = new Finding(family.id(), hits);
      }
    }
    return best;
  }

  /** Whether a line is recognised; the example that did it goes to the front, lines being alike. */
  private static boolean hit(Example[] examples, Entry entry) {
    String text = bounded(entry.piece().text());
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
