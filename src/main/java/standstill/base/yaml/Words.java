package standstill.base.yaml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Collectors;

/** Advice about words: what is allowed, and what was probably meant. */
final class Words {
  private Words() {}

  /** The allowed words, and the nearest one if it is near. */
  static String advice(String found, Collection<String> allowed) {
    String list =
        allowed.size() > 24
            ? "allowed: one of " + allowed.size() + " known words"
            : "allowed: " + allowed.stream().collect(Collectors.joining(", "));
    return nearest(found, allowed)
        .map(word -> list + "; did you mean '" + word + "'?")
        .orElse(list);
  }

  /** The allowed word that is nearest in edits, when at most a third of it differs. */
  static Optional<String> nearest(String found, Collection<String> allowed) {
    return allowed.stream()
        .min(Comparator.comparingInt((String word) -> distance(found, word)).thenComparing(w -> w))
        .filter(
            word ->
                distance(found, word) <= Math.max(1, Math.max(word.length(), found.length()) / 3));
  }

  /**
   * Edits (Levenshtein 1966: insert, delete, replace) between two words of at most 80 characters.
   */
  static int distance(String a, String b) {
    if (a.length() > 80 || b.length() > 80) {
      return Integer.MAX_VALUE;
    }
    int[] before = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] now = new int[b.length() + 1];
      now[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replace = before[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(replace, Math.min(before[j], now[j - 1]) + 1);
      }
      before = now;
    }
    return before[b.length()];
  }
}
