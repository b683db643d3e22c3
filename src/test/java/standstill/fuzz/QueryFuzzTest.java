package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.search.Results;
import standstill.search.Search;
import standstill.store.BaseFolder;

/** Any text is a query. */
class QueryFuzzTest {
  private static final Search SEARCH = search();

  private static Search search() {
    try {
      return Search.open(BaseFolder.builtIn().base(), Optional.empty());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @FuzzTest(maxDuration = "5m")
  void textsAreQueries(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentTextsAreQueries() {
    Bent.inputs(getClass(), "textsAreQueries", 60, QueryFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    String query = new String(bytes, StandardCharsets.UTF_8);
    Results results = SEARCH.find(query, Set.of(), 5);
    assertTrue(results.total() >= 0);
    assertTrue(SEARCH.suggest(query, 5).size() <= 5);
  }
}
