package standstill.search;

import java.io.IOException;
import java.util.Optional;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.spell.DirectSpellChecker;
import org.apache.lucene.search.spell.SuggestMode;
import org.apache.lucene.search.spell.SuggestWord;

/** Words that the base knows, and the nearest one to a word that it doesn't. */
final class Spelling {
  private static final int SHORTEST = 4;

  private final DirectoryReader reader;

  private final Phrases phrases;

  Spelling(DirectoryReader reader, Phrases phrases) {
    this.reader = reader;
    this.phrases = phrases;
  }

  /** Whether a stemmed token stands in an entry. */
  boolean exists(String token) throws IOException {
    for (Entry.Field field : Entry.Field.values()) {
      if (reader.docFreq(new Term(field.name(), token)) > 0) {
        return true;
      }
    }
    return false;
  }

  /** The word that was probably meant; empty when none is near enough, or the word is too short. */
  Optional<String> nearest(String typed) throws IOException {
    if (typed.length() < SHORTEST || !typed.chars().allMatch(Character::isLetter)) {
      return Optional.empty();
    }
    float least = typed.length() < 6 ? 0.7f : 0.6f;
    DirectSpellChecker checker = new DirectSpellChecker();
    checker.setMinPrefix(1);
    checker.setAccuracy(least);
    SuggestWord[] words =
        checker.suggestSimilar(
            new Term(TradeAnalyzer.SPELLING, typed),
            1,
            reader,
            SuggestMode.SUGGEST_WHEN_NOT_IN_INDEX);
    Optional<String> nearest = words.length == 0 ? Optional.empty() : Optional.of(words[0].string);
    float best = words.length == 0 ? least : words[0].score;
    for (String word : phrases.words()) {
      if (word.charAt(0) == typed.charAt(0)) {
        float alike = checker.getDistance().getDistance(typed, word);
        if (alike > best) {
          best = alike;
          nearest = Optional.of(word);
        }
      }
    }
    return nearest;
  }
}
