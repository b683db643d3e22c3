package standstill.search;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import standstill.base.Base;
import standstill.base.Synonyms;

/** The words and phrases that a base calls the same, stemmed. */
final class Phrases {
  private final Map<List<String>, Set<List<String>>> same = new HashMap<>();
  private final Set<String> stems = new HashSet<>();
  private final Set<String> words = new TreeSet<>();

  Phrases(Base base) {
    for (Synonyms group : base.synonyms()) {
      List<List<String>> stemmed = group.words().stream().map(Phrases::stemmed).toList();
      for (String phrase : group.words()) {
        TradeTokenizer.chunks(phrase).forEach(chunk -> words.add(chunk.get(0).text()));
      }
      for (List<String> phrase : stemmed) {
        stems.addAll(phrase);
        Set<List<String>> others = same.computeIfAbsent(phrase, k -> new HashSet<>());
        stemmed.stream().filter(other -> !other.equals(phrase)).forEach(others::add);
      }
    }
  }

  private static List<String> stemmed(String phrase) {
    return TradeTokenizer.chunks(phrase).stream()
        .map(c -> TradeAnalyzer.stem(c.get(0).text()))
        .toList();
  }

  /** What else a phrase is called; empty when it stands in no group. */
  Optional<Set<List<String>>> same(List<String> phrase) {
    return Optional.ofNullable(same.get(phrase));
  }

  /** Whether a stemmed word stands in some phrase. */
  boolean hasWord(String stem) {
    return stems.contains(stem);
  }

  /** All words of the phrases as they are written. */
  Set<String> words() {
    return words;
  }
}
