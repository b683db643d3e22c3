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
  private static final int SAMPLE = 4_000;
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
    String best = "";
    int most = 0;
    for (Family family : families) {
      int hits = 0;
      int count = entries.size();
      int step = Math.max(1, (count - SAMPLE) / (SAMPLE / 2));
      for (int i = 0; i < count; i++) {
        boolean edge = i < SAMPLE / 2 || i >= count - SAMPLE / 2;
        if ((edge || i % step == 0) && hit(family, entries.get(i))) {
          hits++;
        }
      }
      if (hits > most) {
        most = hits;
        best = family.id();
      }
    }
    return new Finding(best, most);
  }

  private static boolean hit(Family family, Entry entry) {
    String text = bounded(entry.piece().text());
    for (Example example : family.recognise()) {
      if (mayMatch(example, text) && example.line().foundIn(text)) {
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
