package standstill.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.core.KeywordTokenizer;
import org.apache.lucene.analysis.en.KStemFilter;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;

/**
 * Tokens of the trade; words of letters alone lose plural and verb endings (Krovetz 1993, "Viewing
 * morphology as an inference process"), everything else stays as it is. No word is thrown away:
 * "not" and "no" matter here.
 */
final class TradeAnalyzer extends Analyzer {
  /** The field whose words keep their endings; it serves to correct spelling. */
  static final String SPELLING = "spelling";

  private static final Analyzer WHOLE =
      new Analyzer() {
        @Override
        protected TokenStreamComponents createComponents(String field) {
          Tokenizer tokenizer = new KeywordTokenizer();
          return new TokenStreamComponents(tokenizer, new KStemFilter(tokenizer));
        }
      };

  TradeAnalyzer() {
    super(PER_FIELD_REUSE_STRATEGY);
  }

  @Override
  protected TokenStreamComponents createComponents(String field) {
    Tokenizer tokenizer = new TradeTokenizer();
    TokenStream stream = field.equals(SPELLING) ? tokenizer : new KStemFilter(tokenizer);
    return new TokenStreamComponents(tokenizer, stream);
  }

  /** A token as it stands in the index. */
  static String stem(String token) {
    try (TokenStream stream = WHOLE.tokenStream("", token)) {
      CharTermAttribute term = stream.addAttribute(CharTermAttribute.class);
      stream.reset();
      String stem = stream.incrementToken() ? term.toString() : token;
      stream.end();
      return stem;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public int getPositionIncrementGap(String field) {
    return 20;
  }
}
