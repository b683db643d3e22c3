package standstill.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BlendedTermQuery;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.MatchNoDocsQuery;
import org.apache.lucene.search.PhraseQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import standstill.base.Base;

/**
 * Finds entries of a base by words or by a pasted line of a log: the entry of this room.
 *
 * <p>Entries whose signs match the text as a line come first, then entries by their words: BM25
 * (Robertson and Zaragoza 2009) in each field, the best field of an entry counting for each word,
 * summed over the words. A word that is in no entry is read as the nearest one that is. When
 * nothing at all is found, the entries with the most similar titles are offered. Thread-safe.
 */
public final class Search {
  private static final float TIE = 0.3f;
  private static final float SYNONYM = 0.75f;
  private static final float PAIR = 0.5f;
  private static final float PHRASE = 1.2f;
  private static final float LITTLE = 0.35f;

  /** Share of the best score below which an entry has nothing to do with the query. */
  private static final double LEAST = 0.12;

  private static final int MOST_BY_SIGN = 8;
  private static final int LEAST_TYPED_FOR_SIGNS = 12;
  private static final int MOST_NEAREST = 5;

  private final Base base;
  private final List<Entry> entries;
  private final Map<String, Integer> places = new HashMap<>();
  private final SearchIndex index;
  private final Ties ties;
  private final OtherKernels otherKernels;
  private final Phrases phrases;
  private final Spelling spelling;
  private final SignLines signLines;

  /** Fields that some entry has; of the others Lucene keeps no figures to compute a score from. */
  private final List<Entry.Field> fields;

  private Search(Base base, List<Entry> entries, SearchIndex index) {
    this.base = base;
    this.entries = entries;
    this.index = index;
    this.ties = new Ties(base, entries);
    this.otherKernels = new OtherKernels(base, entries);
    this.phrases = new Phrases(base);
    this.spelling = new Spelling(index.reader(), phrases);
    this.signLines = new SignLines(base);
    this.fields =
        Stream.of(Entry.Field.values())
            .filter(
                field ->
                    entries.stream()
                        .flatMap(entry -> entry.units().stream())
                        .anyMatch(unit -> unit.field() == field))
            .toList();
    for (int i = 0; i < entries.size(); i++) {
      places.put(key(entries.get(i).kind(), entries.get(i).id()), i);
    }
  }

  /**
   * Opens the search over a base.
   *
   * @param folder where the index is kept for the next time: a folder that this program made, an
   *     empty one or none yet; it is kept nowhere when empty or when the folder can't be written
   * @throws ForeignFolderException when the folder holds anything else; nothing in it is touched
   */
  public static Search open(Base base, Optional<Path> folder) {
    List<Entry> entries = Entry.of(base);
    try {
      return new Search(base, entries, SearchIndex.open(entries, folder));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether the index had to be built on opening, because there was none that fits. */
  public boolean wasBuilt() {
    return index.wasBuilt();
  }

  /** Why the index could not be kept in its folder; empty when it was, or was not to be. */
  public Optional<String> notKept() {
    return index.notKept();
  }

  /** The base that is searched. */
  public Base base() {
    return base;
  }

  /**
   * Finds entries.
   *
   * @param query words, or a line of a log
   * @param kinds kinds of entries that are wanted; all when empty
   * @param most how many at the most
   */
  public Results find(String query, Set<Kind> kinds, int most) {
    List<SignLines.Owned> bySign =
        query.strip().length() < LEAST_TYPED_FOR_SIGNS ? List.of() : signLines.in(query);
    List<Results.Reading> read = new ArrayList<>();
    Set<String> terms = new HashSet<>();
    LinkedHashMap<Integer, Boolean> order = new LinkedHashMap<>();
    bySign.stream()
        .limit(MOST_BY_SIGN)
        .forEach(owned -> order.put(places.get(key(owned.kind(), owned.id())), true));
    try {
      QueryWords words = new QueryWords(phrases, spelling, query, read);
      for (int place : byWords(query, query(words, terms), order.keySet())) {
        order.putIfAbsent(place, false);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    boolean nearest = order.isEmpty() && !query.isBlank();
    if (nearest) {
      nearest(query).forEach(place -> order.put(place, false));
    }
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    List<Found> found = new ArrayList<>();
    int total = 0;
    Highlight highlight = new Highlight(terms);
    for (Map.Entry<Integer, Boolean> each : order.entrySet()) {
      Entry entry = entries.get(each.getKey());
      counts.merge(entry.kind(), 1, Integer::sum);
      if (kinds.isEmpty() || kinds.contains(entry.kind())) {
        total++;
        if (found.size() < most) {
          found.add(highlight.found(entry, each.getValue()));
        }
      }
    }
    return new Results(query, found, total, counts, read, nearest);
  }

  /** Entries by their words and by what they are tied to, best first; those by sign lend theirs. */
  private int[] byWords(String typed, Query query, Set<Integer> bySign) throws IOException {
    double[] scores = new double[entries.size()];
    double best = 0;
    for (ScoreDoc hit : index.searcher().search(query, Math.max(1, entries.size())).scoreDocs) {
      scores[hit.doc] = hit.score * factor(entries.get(hit.doc));
      best = Math.max(best, scores[hit.doc]);
    }
    for (int place : bySign) {
      scores[place] = Math.max(best, 1);
    }
    double[] spread = ties.spread(scores);
    otherKernels.lower(spread, typed);
    double least = DoubleStream.of(spread).max().orElse(0) * LEAST;
    return IntStream.range(0, spread.length)
        .filter(place -> spread[place] > least)
        .boxed()
        .sorted(Comparator.comparingDouble((Integer place) -> -spread[place]))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  /** Of two entries that fit alike, the cause and the commoner one come first. */
  private static double factor(Entry entry) {
    return switch (entry.kind()) {
      case FAULT -> 0.97 + 0.06 * Math.log1p(entry.weight()) / Math.log1p(12);
      case SYMPTOM -> 1.0;
      case CHECK -> 0.95;
      case TRAIL -> 0.85;
    };
  }

  private Query query(QueryWords words, Set<String> terms) throws IOException {
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    List<String> line = new ArrayList<>();
    for (QueryWords.Word word : words.words()) {
      List<Query> ways = new ArrayList<>();
      List<String> alike = new ArrayList<>();
      for (List<String> phrase : word.same()) {
        terms.addAll(phrase);
        if (phrase.size() == 1) {
          alike.add(phrase.get(0));
        } else {
          // The words of a phrase are summed; together they should weigh about as much as one.
          float share = SYNONYM * PHRASE / phrase.size();
          ways.add(new BoostQuery(phrase(phrase, Entry.Field.values()), share));
        }
      }
      ways.add(typed(word, alike, terms, line));
      Query any = new DisjunctionMaxQuery(ways, TIE);
      all.add(QueryWords.tellsLittle(word) ? new BoostQuery(any, LITTLE) : any, Occur.SHOULD);
    }
    for (int i = 1; i < line.size(); i++) {
      Query pair =
          phrase(
              List.of(line.get(i - 1), line.get(i)),
              Entry.Field.TITLE,
              Entry.Field.LOOK,
              Entry.Field.SIGNS,
              Entry.Field.ABOUT);
      boolean little =
          QueryWords.tellsLittle(line.get(i - 1)) || QueryWords.tellsLittle(line.get(i));
      all.add(new BoostQuery(pair, little ? PAIR * LITTLE : PAIR), Occur.SHOULD);
    }
    BooleanQuery built = all.build();
    return built.clauses().isEmpty() ? new MatchNoDocsQuery() : built;
  }

  /** What was typed: each chunk whole, and by its parts with less weight. */
  private Query typed(
      QueryWords.Word word, List<String> alike, Set<String> terms, List<String> line)
      throws IOException {
    BooleanQuery.Builder chunks = new BooleanQuery.Builder();
    for (int c = 0; c < word.chunks().size(); c++) {
      List<String> tokens = word.chunks().get(c);
      boolean inPhrase = word.chunks().size() > 1;
      if (inPhrase && QueryWords.tellsNothing(word.typed().get(c))) {
        line.add(tokens.get(0));
        continue;
      }
      List<Query> whole = new ArrayList<>();
      BooleanQuery.Builder parts = new BooleanQuery.Builder();
      boolean known = false;
      for (int t = 0; t < tokens.size(); t++) {
        String token = tokens.get(t);
        boolean meaningful = t == 0 || token.length() > 1;
        if (!meaningful || !spelling.exists(token)) {
          continue;
        }
        known = true;
        terms.add(token);
        if (t == 0) {
          whole.add(anywhere(token, word.chunks().size() == 1 ? alike : List.of()));
        } else {
          boolean compound = !token.chars().allMatch(Character::isLetterOrDigit);
          float share = compound ? 0.9f : QueryWords.tellsLittle(token) ? 0.15f : 0.5f;
          parts.add(new BoostQuery(anywhere(token), share), Occur.SHOULD);
        }
      }
      line.add(tokens.get(0));
      if (word.chunks().size() > 1 && c == 0) {
        alike.forEach(same -> whole.add(new BoostQuery(anywhere(same), SYNONYM)));
      } else if (!known && !alike.isEmpty()) {
        whole.add(anywhere(tokens.get(0), alike));
      }
      BooleanQuery pieces = parts.build();
      if (!pieces.clauses().isEmpty()) {
        whole.add(pieces);
      }
      if (!whole.isEmpty()) {
        Query any = new DisjunctionMaxQuery(whole, 0.3f);
        boolean little = inPhrase && QueryWords.tellsLittle(tokens.get(0));
        chunks.add(little ? new BoostQuery(any, LITTLE) : any, Occur.SHOULD);
      }
    }
    return chunks.build();
  }

  private Query anywhere(String token) {
    return anywhere(token, List.of());
  }

  /** A word, or one of the same meaning, in any field; how rare it is counts over all alike. */
  private Query anywhere(String token, List<String> alike) {
    BlendedTermQuery.Builder terms =
        new BlendedTermQuery.Builder()
            .setRewriteMethod(new BlendedTermQuery.DisjunctionMaxRewrite(TIE));
    for (Entry.Field field : fields) {
      terms.add(new Term(field.name(), token), field.boost());
      for (String same : alike) {
        terms.add(new Term(field.name(), same), field.boost() * SYNONYM);
      }
    }
    return terms.build();
  }

  private Query phrase(List<String> words, Entry.Field... in) {
    if (words.size() == 1) {
      return anywhere(words.get(0));
    }
    List<Query> fields = new ArrayList<>();
    for (Entry.Field field : in) {
      fields.add(
          new BoostQuery(
              new PhraseQuery(1, field.name(), words.toArray(String[]::new)), field.boost()));
    }
    return new DisjunctionMaxQuery(fields, TIE);
  }

  /** Entries whose titles, or other words for them, share most runs of three letters. */
  private List<Integer> nearest(String query) {
    Set<String> wanted = runs(query);
    record Near(int place, double share) {}
    List<Near> all = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      double best = 0;
      for (Entry.Unit unit : entries.get(i).units()) {
        if (unit.field() == Entry.Field.TITLE || unit.field() == Entry.Field.LOOK) {
          Set<String> own = runs(unit.text());
          long shared = own.stream().filter(wanted::contains).count();
          best = Math.max(best, 2.0 * shared / Math.max(1, own.size() + wanted.size()));
        }
      }
      if (best > 0) {
        all.add(new Near(i, best * factor(entries.get(i))));
      }
    }
    return all.stream()
        .sorted(Comparator.comparingDouble(Near::share).reversed().thenComparingInt(Near::place))
        .limit(MOST_NEAREST)
        .map(Near::place)
        .toList();
  }

  private static Set<String> runs(String text) {
    String plain = " " + text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ") + " ";
    Set<String> runs = new HashSet<>();
    for (int i = 0; i + 3 <= Math.min(plain.length(), 400); i++) {
      runs.add(plain.substring(i, i + 3));
    }
    return runs;
  }

  /** Titles and other words for what people see that go on from what was typed so far. */
  public List<String> suggest(String typed, int most) {
    String[] words = typed.strip().toLowerCase(Locale.ROOT).split("\\s+");
    if (words[words.length - 1].length() < 2) {
      return List.of();
    }
    record Suggestion(String text, boolean begins, int kind) {}
    Set<Suggestion> all = new LinkedHashSet<>();
    for (Entry entry : entries) {
      for (Entry.Unit unit : entry.units()) {
        boolean title = unit.field() == Entry.Field.TITLE;
        boolean other = entry.kind() == Kind.SYMPTOM && unit.field() == Entry.Field.LOOK;
        String text = unit.text().toLowerCase(Locale.ROOT);
        if ((title || other) && goesOn(text, words)) {
          int kind = other ? 0 : entry.kind().ordinal() + 1;
          all.add(new Suggestion(unit.text(), text.startsWith(words[0]), kind));
        }
      }
    }
    return all.stream()
        .sorted(
            Comparator.comparing(Suggestion::begins)
                .reversed()
                .thenComparing(Suggestion::kind)
                .thenComparing(s -> s.text().length()))
        .map(Suggestion::text)
        .distinct()
        .limit(most)
        .toList();
  }

  private static boolean goesOn(String text, String[] words) {
    String spaced = " " + text.replaceAll("[^\\p{L}\\p{N}]+", " ") + " ";
    for (String word : words) {
      if (!spaced.contains(" " + word)) {
        return false;
      }
    }
    return true;
  }

  private static String key(Kind kind, String id) {
    return kind + " " + id;
  }
}
