package standstill.log;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Example;
import standstill.base.Family;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Finds out of which family a log is.
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

  private final List<Signs> families;

  Recogniser(List<Family> families) {
    this.families = families.stream().map(Signs::of).toList();
  }

  /** The lines that a family is known by, and those that it may be known by. */
  private record Signs(Family family, Lines sure, Lines mayBe) {
    static Signs of(Family family) {
      return new Signs(family, Lines.of(family.recognise()), Lines.of(family.mayBe()));
    }
  }

  private record Lines(List<Pattern> lines, PatternSet set) {
    static Lines of(List<Example> examples) {
      List<Pattern> lines = examples.stream().map(Example::line).toList();
      return new Lines(lines, new PatternSet(lines));
    }
  }

  /**
   * What was found.
   *
   * @param family the most specific family with the most hits, or empty
   * @param hits its hits in the sample, with those of the families that it includes
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
    Map<String, Integer> sure = new HashMap<>();
    Map<String, Integer> all = new HashMap<>();
    for (Signs signs : families) {
      BitSet own = hits(signs.sure(), entries, sample, known);
      sure.put(signs.family().id(), own.cardinality());
      own.or(hits(signs.mayBe(), entries, sample, known));
      all.put(signs.family().id(), own.cardinality());
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
    for (Signs signs : families) {
      Family family = signs.family();
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

  private static BitSet hits(Lines lines, List<Entry> entries, int sample, int known) {
    BitSet hits = new BitSet(entries.size());
    if (!lines.lines().isEmpty()) {
      Look look = new Look(lines);
      int count = entries.size();
      for (int i = 0; i < count; i++) {
        if (isIn(sample, i, count) && !isIn(known, i, count)) {
          hits.set(i, look.hits(entries.get(i)));
        }
      }
    }
    return hits;
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
    private final Lines lines;
    private int last = -1;

    Look(Lines lines) {
      this.lines = lines;
    }

    boolean hits(Entry entry) {
      return hits(bounded(entry.piece().text()))
          || (entry.prefix().isPresent() && hits(bounded(entry.message())));
    }

    private boolean hits(String text) {
      if (last >= 0
          && mayMatch(lines.lines().get(last), text)
          && lines.lines().get(last).foundIn(text)) {
        return true;
      }
      boolean[] found = new boolean[1];
      lines
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
