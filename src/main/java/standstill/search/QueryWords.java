package standstill.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A query taken apart: chunks of text, what each stands for, and what the base calls the same.
 * Words that everybody uses and that tell nothing apart are left out, unless nothing else is there.
 */
final class QueryWords {
  private static final int LONGEST_QUERY = 600;
  private static final int MOST_CHUNKS = 40;
  private static final Set<String> TELL_NOTHING =
      Set.of(
          ("a an the is are was were be been am it its it's this that these those there here of to in"
                  + " on at by for with from as and or but so if i i'm i've me my mine we our you your"
                  + " he she they them his her do does did doesn't don't didn't has have had having can"
                  + " can't could would should will won't what why how which who when where then than"
                  + " help please hi hello thanks pc computer laptop desktop-pc box linux get gets got"
                  + " getting just only very really some any all always again now today yesterday new"
                  + " keep keeps after before during while into onto try trying tried says say"
                  + " said shows show message fix solve problem issue trouble thing something")
              .split(" "));

  private static final Set<String> TELL_LITTLE =
      Set.of(
          ("not no never nothing every over need first up out off under wrong again anything make go"
                  + " come work way time one two boot start exist old own found load")
              .split(" "));

  private final List<Word> words = new ArrayList<>();

  /**
   * A chunk of a query, or several that are one phrase of a group of synonyms.
   *
   * @param chunks the tokens of each chunk, stemmed: the chunk itself first, then its parts
   * @param typed what was typed
   * @param same phrases of the same meaning, as stemmed words
   */
  record Word(List<List<String>> chunks, List<String> typed, List<List<String>> same) {}

  /**
   * Takes a query apart.
   *
   * @param read gets the words that were taken for others, because no entry and no phrase has them
   */
  QueryWords(Phrases phrases, Spelling spelling, String query, List<Results.Reading> read)
      throws IOException {
    String text = query.length() > LONGEST_QUERY ? query.substring(0, LONGEST_QUERY) : query;
    List<List<String>> chunks = new ArrayList<>();
    List<String> typed = new ArrayList<>();
    for (List<TradeTokenizer.Token> tokens : TradeTokenizer.chunks(text)) {
      if (chunks.size() == MOST_CHUNKS) {
        break;
      }
      List<String> stems =
          tokens.stream().map(t -> TradeAnalyzer.stem(t.text())).distinct().toList();
      String word = tokens.get(0).text();
      if (!known(stems, word, phrases, spelling)) {
        Optional<String> near = spelling.nearest(word);
        if (near.isPresent()) {
          read.add(new Results.Reading(word, near.get()));
          word = near.get();
          stems = List.of(TradeAnalyzer.stem(word));
        }
      }
      chunks.add(stems);
      typed.add(word);
    }
    group(chunks, typed, phrases);
  }

  private static boolean known(List<String> stems, String typed, Phrases phrases, Spelling spelling)
      throws IOException {
    if (tellsNothing(typed) || phrases.hasWord(stems.get(0))) {
      return true;
    }
    for (String stem : stems) {
      if (spelling.exists(stem)) {
        return true;
      }
    }
    return false;
  }

  private void group(List<List<String>> chunks, List<String> typed, Phrases phrases) {
    List<Word> all = new ArrayList<>();
    List<Word> telling = new ArrayList<>();
    int at = 0;
    while (at < chunks.size()) {
      int taken = 1;
      Set<List<String>> same = Set.of();
      for (int length = Math.min(4, chunks.size() - at); length >= 1; length--) {
        List<String> phrase = chunks.subList(at, at + length).stream().map(c -> c.get(0)).toList();
        Optional<Set<List<String>>> others = phrases.same(phrase);
        if (others.isPresent()) {
          taken = length;
          same = others.get();
          break;
        }
      }
      Word word =
          new Word(
              List.copyOf(chunks.subList(at, at + taken)),
              List.copyOf(typed.subList(at, at + taken)),
              List.copyOf(same));
      all.add(word);
      if (taken > 1 || !TELL_NOTHING.contains(typed.get(at))) {
        telling.add(word);
      }
      at += taken;
    }
    words.addAll(telling.isEmpty() ? all : telling);
  }

  /** Whether a word counts less than others, because it stands in so many queries and entries. */
  static boolean tellsLittle(Word word) {
    return word.chunks().size() == 1 && tellsLittle(word.chunks().get(0).get(0));
  }

  /** Whether a typed word is only grammar. */
  static boolean tellsNothing(String typed) {
    return TELL_NOTHING.contains(typed);
  }

  /** Whether a stemmed token counts less than others. */
  static boolean tellsLittle(String token) {
    return TELL_LITTLE.contains(token);
  }

  List<Word> words() {
    return words;
  }
}
