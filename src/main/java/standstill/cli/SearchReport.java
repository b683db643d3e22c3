package standstill.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import standstill.base.Base;
import standstill.score.SearchScore;
import standstill.search.Search;

/** Prints how good the search is. */
final class SearchReport {
  private static final double WEAK = 0.7;

  private SearchReport() {}

  static int print(Base base, Path queries, PrintWriter out) {
    SearchScore score;
    try {
      Search search = Search.open(base, Optional.empty());
      score = SearchScore.of(search, SearchScore.read(queries));
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the queries could not be read: " + e.getMessage());
    }
    for (SearchScore.Asked asked : score.queries()) {
      if (asked.ndcg() < WEAK) {
        out.printf(Locale.ROOT, "%.3f  %s%n", asked.ndcg(), asked.judged().text());
      }
    }
    out.printf(
        Locale.ROOT,
        "%d queries: nDCG@10 %.3f, mean reciprocal rank %.3f%n",
        score.queries().size(),
        score.ndcg(),
        score.meanReciprocalRank());
    out.flush();
    return ExitCode.OK;
  }
}
