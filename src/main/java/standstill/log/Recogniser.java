package standstill.log;

import java.util.List;
import standstill.base.Example;
import standstill.base.Family;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Tells which family of kernels a text comes from, or why it is no boot log.
 *
 * <p>Each family's recognisers are counted over the text; the most hits win. A long text is
 * sampled, its beginning and end in full: a log shows what it is everywhere.
 */
final class Recogniser {
  private static final int SAMPLE = 900;
  private static final int LARGE_SAMPLE = 6_000;
  private static final int LONGEST = 1_000;

  private final List<Signs> families;

  Recogniser(List<Family> families) {
    this.families = families.stream().map(Signs::of).toList();
  }

  /** The lines that a family is known by. */
  private record Signs(String family, List<Pattern> lines, PatternSet set) {
    static Signs of(Family family) {
      List<Pattern> lines = family.recognise().stream().map(Example::line).toList();
      return new Signs(family.id(), lines, new PatternSet(lines));
    }
  }

  /**
   * What was found.
   *
   * @param family the family with the most hits, or empty
   * @param hits its hits in the sample
   */
  record Finding(String family, int hits) {}

  Finding look(List<Entry> entries) {
    Finding finding = look(entries, SAMPLE, 0);
    return finding.hits() > 0 || entries.size() <= SAMPLE
        ? finding
        : look(entries, LARGE_SAMPLE, SAMPLE);
  }

  /**
   * Looks at a sample.
   *
   * @param known size of a sample that showed nothing, so that its lines need no second look
   */
  private Finding look(List<Entry> entries, int sample, int known) {
    Finding best = new Finding("", 0);
    for (Signs family : families) {
      Look look = new Look(family);
      int hits = 0;
      int count = entries.size();
      for (int i = 0; i < count; i++) {
        if (isIn(sample, i, count) && !isIn(known, i, count) && look.hits(entries.get(i))) {
          hits++;
        }
      }
      if (hits > best.hits()) {
        best = new Finding(family.family(), hits);
      }
    }
    return best;
  }

  private static boolean isIn(int sample, int index, int count) {
    int third = sample / 3;
    if (third == 0) {
      return false;
    }
    int step = Math.max(1, (count - 2 * third) / third);
    return index < third || index >= count - third || index % step == 0;
  }

  /** One look at a text; the pattern that fitted last is tried first, lines being alike. */
  private static final class Look {
    private final Signs signs;
    private int last = -1;

    Look(Signs signs) {
      this.signs = signs;
    }

    boolean hits(Entry entry) {
      String text = bounded(entry.piece().text());
      if (last >= 0
          && mayMatch(signs.lines().get(last), text)
          && signs.lines().get(last).foundIn(text)) {
        return true;
      }
      boolean[] found = new boolean[1];
      signs
          .set()
          .candidates(
              text,
              false,
              (line, place) -> {
                if (!found[0] && place != last && line.foundIn(text)) {
                  found[0] = true;
                  last = place;
                }
              });
      return found[0];
    }
  }

  static String bounded(String text) {
    return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
  }

  /** Whether a literal that every match needs stands in the text; saves running the engine. */
  static boolean mayMatch(Pattern line, String text) {
    List<String> literals = line.literals();
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
