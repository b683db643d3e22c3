package standstill.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.junit.jupiter.api.Test;

/**
 * The scores that the search stands on, against BM25 worked by hand: idf = ln(1 + (N - n + 0.5) /
 * (n + 0.5)) and tf = f / (f + k1 (1 - b + b dl / avgdl)) with k1 = 1.2, b = 0.75, as the
 * documentation of Lucene's BM25Similarity gives them, after Robertson and Zaragoza 2009, "The
 * Probabilistic Relevance Framework". Our analyzer and fields are used.
 */
class Bm25Test {
  private static final List<String> TEXTS =
      List.of(
          "root device not found root",
          "kernel panic unable to mount root",
          "usb device not accepting address error",
          "disk read error sector");

  private static Map<Integer, Double> scores(String... words) throws IOException {
    try (ByteBuffersDirectory directory = new ByteBuffersDirectory()) {
      try (IndexWriter writer =
          new IndexWriter(directory, new IndexWriterConfig(new TradeAnalyzer()))) {
        for (String text : TEXTS) {
          Document document = new Document();
          document.add(new TextField("SIGNS", text, Field.Store.NO));
          writer.addDocument(document);
        }
      }
      try (DirectoryReader reader = DirectoryReader.open(directory)) {
        BooleanQuery.Builder query = new BooleanQuery.Builder();
        for (String word : words) {
          query.add(new TermQuery(new Term("SIGNS", word)), Occur.SHOULD);
        }
        Map<Integer, Double> scores = new LinkedHashMap<>();
        for (ScoreDoc hit : new IndexSearcher(reader).search(query.build(), 10).scoreDocs) {
          scores.put(hit.doc + 1, (double) hit.score);
        }
        return scores;
      }
    }
  }

  private static void expect(Map<Integer, Double> expected, Map<Integer, Double> found) {
    assertEquals(expected.keySet(), found.keySet());
    expected.forEach((document, score) -> assertEquals(score, found.get(document), 1e-5));
  }

  @Test
  void scoresAreThoseWorkedByHand() throws IOException {
    expect(Map.of(1, 0.439098, 2, 0.297671), scores("root"));
    expect(Map.of(1, 0.321327, 3, 0.297671), scores("device"));
    expect(Map.of(1, 0.760424, 2, 0.297671, 3, 0.297671), scores("root", "device"));
    expect(Map.of(4, 0.349067, 3, 0.297671), scores("error"));
  }

  @Test
  void scoresFollowTheFormula() throws IOException {
    double idf = Math.log(1 + (4 - 2 + 0.5) / (2 + 0.5));
    double tf = 2 / (2 + 1.2 * (1 - 0.75 + 0.75 * 5 / 5.25));
    assertEquals(idf * tf, scores("root").get(1), 1e-5);
  }
}
