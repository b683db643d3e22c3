package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Groups the Loghub samples of 2,000 lines and compares the accuracy with the published one.
 *
 * <p>Data: J. Zhu, S. He, P. He, J. Liu, M. R. Lyu, "Loghub: A Large Collection of System Log
 * Datasets for AI-driven Log Analytics", ISSRE 2023. Figures: the benchmark page of the logparser
 * project, commit db27223 (after Zhu et al., ICSE-SEIP 2019, table II): Linux 0.690, Thunderbird
 * 0.955, with the depth, similarity and masks of that benchmark.
 *
 * <p>The samples' licence is for research and academic work, so they aren't kept here: {@code
 * src/lab/templates/fetch} gets them. Without them these tests are skipped and say so; with {@code
 * -Dstandstill.loghub.required=true} they fail.
 */
class PublishedGroupingTest {
  private static final double ROUNDING = 0.005;

  private record Sample(List<String> messages, List<String> events) {}

  @ParameterizedTest
  @CsvSource({"Linux, 6, 0.39, 0.690, 112", "Thunderbird, 4, 0.5, 0.955, 182"})
  void thePublishedSettingsGiveThePublishedAccuracy(
      String name, int depth, double similarity, double published, int groups) throws IOException {
    Sample sample = sample(name);
    TemplateTree tree = new TemplateTree(depth, similarity, 100, false);
    double accuracy =
        GroupingAccuracy.of(
            sample.events(),
            sample.messages().stream()
                .map(m -> tree.add(published(name, m), "").orElseThrow())
                .toList());
    assertEquals(published, accuracy, ROUNDING);
    assertEquals(groups, tree.size());
  }

  /** What {@code propose} does: more is masked, so that other settings are right. */
  @ParameterizedTest
  @CsvSource({"Linux, 0.690", "Thunderbird, 0.955"})
  void ourMasksAndSettingsAreNoWorse(String name, double published) throws IOException {
    Sample sample = sample(name);
    TemplateTree tree = new TemplateTree(Miner.DEPTH, Miner.SIMILARITY, Miner.MOST_CHILDREN, true);
    List<TemplateTree.Group> found = new ArrayList<>();
    for (String message : sample.messages()) {
      List<Token> tokens = Token.of(message);
      found.add(
          tree.add(tokens.stream().map(Token::masked).toList(), Token.causes(tokens))
              .orElseThrow());
    }
    double accuracy = GroupingAccuracy.of(sample.events(), found);
    assertTrue(accuracy >= published, name + ": " + accuracy);
  }

  /** The masks of the benchmark: IPv4 addresses, and for Linux times of day. */
  private static List<String> published(String name, String message) {
    String masked = message.replaceAll("(\\d+\\.){3}\\d+", "<*>");
    if (name.equals("Linux")) {
      masked = masked.replaceAll("\\d{2}:\\d{2}:\\d{2}", "<*>");
    }
    return Arrays.asList(masked.strip().split("\\s+"));
  }

  private static Sample sample(String name) throws IOException {
    Path file =
        Path.of(
            System.getProperty("standstill.loghub", "target/loghub"),
            name + "_2k.log_structured.csv");
    boolean required = Boolean.getBoolean("standstill.loghub.required");
    assumeTrue(
        required || Files.exists(file), "no sample " + file + "; src/lab/templates/fetch gets it");
    List<List<String>> rows = Files.readAllLines(file).stream().map(r -> fields(r)).toList();
    int message = rows.get(0).indexOf("Content");
    int event = rows.get(0).indexOf("EventId");
    List<List<String>> lines = rows.subList(1, rows.size());
    assertEquals(2_000, lines.size());
    return new Sample(
        lines.stream().map(row -> row.get(message)).toList(),
        lines.stream().map(row -> row.get(event)).toList());
  }

  /** The fields of a row (RFC 4180; no field of the samples holds a line break). */
  private static List<String> fields(String row) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < row.length(); i++) {
      char c = row.charAt(i);
      if (c == '"' && quoted && i + 1 < row.length() && row.charAt(i + 1) == '"') {
        field.append(c);
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString());
    return fields;
  }
}
