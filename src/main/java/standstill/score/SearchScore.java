package standstill.score;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.search.Found;
import standstill.search.Search;

/**
 * How good the search is, on queries with judged answers.
 *
 * <p>Relevance is graded: 3 is what the person needs, 2 a likely alternative, 1 worth a look.
 * Entries without a judgement count 0. Measures: nDCG at 10 with log2(rank + 1), against the ideal
 * order of all judged entries; and the mean of 1/rank of the first entry of grade 2 or more.
 *
 * @param queries what came out of each
 */
public record SearchScore(List<Asked> queries) {
  private static final int DEPTH = 10;

  public SearchScore {
    queries = List.copyOf(queries);
  }

  /**
   * A judged query.
   *
   * @param text the query
   * @param grades grades by {@code kind:id}
   */
  public record Judged(String text, Map<String, Integer> grades) {
    public Judged {
      grades = Map.copyOf(grades);
    }
  }

  /**
   * What came out of a query.
   *
   * @param judged the query
   * @param found the first ten, as {@code kind:id}
   * @param ndcg between 0 and 1
   * @param rank rank of the first of grade 2 or more, 0 when it is not among the first ten
   */
  public record Asked(Judged judged, List<String> found, double ndcg, int rank) {
    public Asked {
      found = List.copyOf(found);
    }
  }

  /**
   * Reads judged queries: on each line the query, then after tabs {@code kind:id=grade}; lines that
   * begin with # are notes.
   *
   * @throws IOException when the file can't be read, or a line is not of that form
   */
  public static List<Judged> read(Path file) throws IOException {
    List<Judged> all = new ArrayList<>();
    int number = 0;
    for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      List<String> cells = List.of(line.split("\t"));
      Map<String, Integer> grades = new LinkedHashMap<>();
      for (String cell : cells.subList(1, cells.size())) {
        if (!cell.matches("[a-z]+:[a-z0-9-]+=[1-3]")) {
          throw new IOException(file + ":" + number + ": not of the form kind:id=grade: " + cell);
        }
        int equals = cell.indexOf('=');
        grades.put(cell.substring(0, equals), cell.charAt(equals + 1) - '0');
      }
      if (grades.isEmpty()) {
        throw new IOException(file + ":" + number + ": query without a judged answer");
      }
      all.add(new Judged(cells.get(0), grades));
    }
    return all;
  }

  /** Asks every query. */
  public static SearchScore of(Search search, List<Judged> queries) {
    List<Asked> asked = new ArrayList<>();
    for (Judged judged : queries) {
      List<String> found = new ArrayList<>();
      for (Found each : search.find(judged.text(), Set.of(), DEPTH).found()) {
        found.add(each.kind().word() + ":" + each.id());
      }
      List<Double> gains =
          found.stream().map(id -> (double) judged.grades().getOrDefault(id, 0)).toList();
      List<Double> ideal = judged.grades().values().stream().map(Integer::doubleValue).toList();
      int rank = 0;
      for (int i = 0; i < gains.size() && rank == 0; i++) {
        rank = gains.get(i) >= 2 ? i + 1 : 0;
      }
      asked.add(new Asked(judged, found, Metrics.ndcg(gains, ideal, DEPTH), rank));
    }
    return new SearchScore(asked);
  }

  /** Mean nDCG at 10. */
  public double ndcg() {
    return queries.stream().mapToDouble(Asked::ndcg).average().orElse(0);
  }

  /** Mean reciprocal rank of the first entry of grade 2 or more. */
  public double meanReciprocalRank() {
    return Metrics.meanReciprocalRank(queries.stream().map(Asked::rank).toList());
  }
}
