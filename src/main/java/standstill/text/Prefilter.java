package standstill.text;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Tells, in one pass over a text, which of many patterns can match it at all.
 *
 * <p>Every pattern that names literals (see {@link Pattern#literals}) is filed under one run of
 * three characters of each literal, the one that the fewest other literals share. One pass looks at
 * each run of three characters in the text, so the cost grows with the text and not with text times
 * patterns. A pattern that passes still has to be run; a pattern without literals always passes.
 * The filter may cost time, never an answer.
 */
public final class Prefilter {
  private static final int GRAM = 3;
  private static final int SLOTS = 1 << 15;

  private record Entry(int pattern, String literal, int offset) {}

  private final Entry[][] slots = new Entry[SLOTS][];
  private final int[] always;
  private final int size;

  /** A filter over patterns, which are known by their places in the list from then on. */
  public Prefilter(List<Pattern> patterns) {
    this(patterns.stream().map(Pattern::literals).toList(), patterns.size());
  }

  /** A filter for texts without capitals, in which patterns are to match blind to case. */
  static Prefilter ofLowerCase(List<Pattern> patterns) {
    return new Prefilter(
        patterns.stream()
            .map(p -> p.literals().stream().map(l -> l.toLowerCase(Locale.ROOT)).toList())
            .toList(),
        patterns.size());
  }

  private Prefilter(List<List<String>> literalsOfEach, int size) {
    this.size = size;
    Map<String, Integer> shared = new HashMap<>();
    for (List<String> literals : literalsOfEach) {
      for (String literal : literals) {
        for (int i = 0; i + GRAM <= literal.length(); i++) {
          shared.merge(literal.substring(i, i + GRAM), 1, Integer::sum);
        }
      }
    }
    Map<Integer, List<Entry>> filed = new HashMap<>();
    List<Integer> unfiltered = new ArrayList<>();
    for (int p = 0; p < size; p++) {
      List<String> literals = literalsOfEach.get(p);
      if (literals.isEmpty()) {
        unfiltered.add(p);
      }
      for (String literal : literals) {
        int best = 0;
        int fewest = Integer.MAX_VALUE;
        for (int i = 0; i + GRAM <= literal.length(); i++) {
          int count = shared.getOrDefault(literal.substring(i, i + GRAM), 0);
          if (count < fewest) {
            fewest = count;
            best = i;
          }
        }
        filed
            .computeIfAbsent(slot(literal, best), k -> new ArrayList<>())
            .add(new Entry(p, literal, best));
      }
    }
    filed.forEach((slot, entries) -> slots[slot] = entries.toArray(new Entry[0]));
    always = unfiltered.stream().mapToInt(i -> i).toArray();
  }

  private static int slot(String text, int at) {
    int hash = text.charAt(at) * 31 * 31 + text.charAt(at + 1) * 31 + text.charAt(at + 2);
    return (hash * 0x9E3779B1) >>> (32 - 15);
  }

  /** Places of the patterns that may match the text, ascending. */
  public int[] candidates(String text) {
    BitSet found = null;
    for (int i = 0; i + GRAM <= text.length(); i++) {
      Entry[] entries = slots[slot(text, i)];
      if (entries != null) {
        for (Entry entry : entries) {
          int start = i - entry.offset;
          if (start >= 0 && text.startsWith(entry.literal, start)) {
            if (found == null) {
              found = new BitSet(size);
            }
            found.set(entry.pattern);
          }
        }
      }
    }
    if (found == null) {
      return always;
    }
    for (int p : always) {
      found.set(p);
    }
    return found.stream().toArray();
  }
}
