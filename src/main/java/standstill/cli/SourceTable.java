package standstill.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.rank.Corrections;
import standstill.score.Metrics;
import standstill.score.ModelFit;
import standstill.score.Result;
import standstill.score.Score;
import standstill.score.Scorer;

/** Measures side by side, a row for each source. */
final class SourceTable {
  private static final double SURE = 0.9;

  /** Measures of a source that must not get worse. */
  private static final List<String> HELD =
      List.of("top1", "stop", "stage", "falseAlarms", "sureAndWrong");

  private SourceTable() {}

  /** The measures of each source. */
  static void print(Score score, List<String> sources, PrintWriter out) {
    out.printf(
        Locale.ROOT,
        "%-10s %5s %6s %6s %6s %6s %10s %8s %6s %6s %12s%n",
        "source",
        "boots",
        "first",
        "three",
        "stop",
        "stage",
        "unlisted",
        "alarms",
        "brier",
        "calib",
        "sure & wrong");
    for (String source : sources) {
      Score of = score.of(source);
      out.printf(
          Locale.ROOT,
          "%-10s %5d %6.3f %6.3f %6.3f %6.3f %4d of %2d %3d of %2d %6.3f %6.3f %4d of %3d%n",
          source,
          of.results().size(),
          of.top1(),
          of.top3(),
          of.stopAccuracy(),
          of.stageAccuracy(),
          of.unlistedRight(),
          of.unlisted(),
          of.falseAlarms().size(),
          of.healthy(),
          Metrics.brier(of.forecasts()),
          Metrics.calibrationError(of.forecasts()),
          of.sureAndWrong(SURE).size(),
          of.sure(SURE));
    }
    out.println();
    for (Result wrong : score.results()) {
      if (!wrong.stopRight().orElse(true)) {
        out.printf(
            "stop wrong: %s/%s came out %s, right: %s%n",
            wrong.source(), wrong.label().name(), wrong.stop(), wrong.label().stops());
      }
    }
    for (Result wrong : score.sureAndWrong(SURE)) {
      out.printf(
          Locale.ROOT,
          "sure and wrong: %s/%s (%.2f) %s, first %s, right: %s%n",
          wrong.source(),
          wrong.label().name(),
          wrong.topProbability(),
          wrong.verdict(),
          wrong.top().isEmpty() ? "-" : wrong.top().get(0),
          wrong.label().label());
    }
    out.println();
  }

  /** The measures of each source, by its name. */
  static void add(ObjectNode node, Score score, List<String> sources) {
    for (String source : sources) {
      Score of = score.of(source);
      node.putObject(source)
          .put("boots", of.results().size())
          .put("top1", of.top1())
          .put("top3", of.top3())
          .put("stop", of.stopAccuracy())
          .put("stage", of.stageAccuracy())
          .put("falseAlarms", of.falseAlarms().size())
          .put("calibrationError", Metrics.calibrationError(of.forecasts()))
          .put("sureAndWrong", of.sureAndWrong(SURE).size());
    }
  }

  /**
   * Says what is worse than recorded, and how much there is; a source that is not here is named.
   */
  static int compare(PrintWriter out, JsonNode now, JsonNode recorded) {
    int worse = 0;
    for (Map.Entry<String, JsonNode> source : recorded.properties()) {
      JsonNode here = now.path(source.getKey());
      if (here.isMissingNode()) {
        out.println("source " + source.getKey() + " is not here: its figures were not compared");
        continue;
      }
      for (String name : HELD) {
        double before = source.getValue().path(name).asDouble();
        double after = here.path(name).asDouble();
        boolean less = name.equals("falseAlarms") || name.equals("sureAndWrong");
        if (less ? after > before + 1e-9 : after < before - 1e-9) {
          out.printf(
              Locale.ROOT,
              "worse than recorded: %s of source %s is %.4f, was %.4f%n",
              name,
              source.getKey(),
              after,
              before);
          worse++;
        }
      }
    }
    return worse;
  }

  /** What each correction earns: the measures without it, and what changes. */
  static int ablation(Scorer scorer, PrintWriter out) {
    List<String> sources = scorer.sources();
    Score all = scorer.score();
    out.printf("%-14s", "without");
    sources.forEach(source -> out.printf(" %22s", source));
    out.printf("%n%-14s", "");
    sources.forEach(source -> out.printf(" %22s", "first  brier  alarms"));
    out.println();
    row(out, "(nothing)", all, sources);
    for (String name : Corrections.NAMES) {
      row(out, name, scorer.with(Corrections.without(Set.of(name))).score(), sources);
      out.flush();
    }
    return ExitCode.OK;
  }

  private static void row(PrintWriter out, String name, Score score, List<String> sources) {
    out.printf("%-14s", name);
    for (String source : sources) {
      Score of = score.of(source);
      out.printf(
          Locale.ROOT,
          " %8.3f %6.3f %6d",
          of.top1(),
          Metrics.brier(of.forecasts()),
          of.falseAlarms().size());
    }
    out.println();
  }

  /** Fits the model for each source on the others, and once on all. */
  static int fitted(Scorer scorer, Base base, PrintWriter out) {
    ModelFit fit = new ModelFit(scorer, base.scale().model());
    List<Result> nested = new ArrayList<>();
    for (String source : scorer.sources()) {
      Map<String, Double> model = fit.without(source);
      out.println("fitted without " + source + ": " + model);
      out.flush();
      nested.addAll(scorer.score(model).of(source).results());
    }
    out.println();
    print(new Score(nested), scorer.sources(), out);
    out.println("fitted on all: " + fit.onAll());
    return ExitCode.OK;
  }
}
