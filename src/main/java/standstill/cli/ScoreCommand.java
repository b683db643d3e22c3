package standstill.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Rate;
import standstill.base.Sign;
import standstill.rank.Corrections;
import standstill.score.Metrics;
import standstill.score.Reliability;
import standstill.score.Result;
import standstill.score.Score;
import standstill.score.Scorer;
import standstill.score.Source;
import standstill.store.BootFolder;
import standstill.store.SourceFolder;
import standstill.text.Problem;

/** Measures the diagnosis on labelled logs. */
@Command(
    name = "score",
    mixinStandardHelpOptions = true,
    description = {
      "Measures the diagnosis on labelled boots.",
      "Background rates are fitted numbers; they are evaluated by ten-fold cross-validation, in which all logs"
          + " of one fault stand in one fold."
    })
final class ScoreCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "DIR",
      defaultValue = "kb/boots",
      description = "Folder of labelled logs; ${DEFAULT-VALUE} when left out.")
  private Path folder = Path.of("kb/boots");

  @Option(names = "--json", description = "Write the measures as JSON.")
  private boolean json;

  @Option(
      names = "--hide-each",
      description = "Take each fault out of the base in turn and see what its boots come out as.")
  private boolean hideEach;

  @Option(
      names = "--fit",
      paramLabel = "FILE",
      description = "Write measured background rates to this file (kb/rates.yaml), with counts.")
  private @Nullable Path fit;

  @Option(
      names = "--as-is",
      description =
          "Use the base's own rates instead of cross-validating: for logs on which nothing was fitted.")
  private boolean asIs;

  @Option(
      names = "--diagram",
      paramLabel = "FILE",
      description = "Write the reliability diagram as SVG to this file.")
  private @Nullable Path diagram;

  @Option(
      names = "--least",
      paramLabel = "FILE",
      description =
          "Fail with exit code 1 when a measure is worse than recorded in this JSON file.")
  private @Nullable Path least;

  @Option(
      names = "--sources",
      paramLabel = "DIR",
      description = {
        "Measure on sources that other people keep as well: each folder in DIR with a labels.yaml is one, and an"
            + " outer fold. Nothing that is fitted on a source is judged on it."
      })
  private @Nullable Path sources;

  @Option(
      names = "--judged",
      paramLabel = "DIR",
      defaultValue = "src/lab/sources",
      description =
          "Folder that says which faults and stops are right for the logs of those sources;"
              + " ${DEFAULT-VALUE} when left out.")
  private Path judged = Path.of("src/lab/sources");

  @Option(
      names = "--without",
      paramLabel = "NAME",
      description = "Switch a correction of the model off, to see what it earns.")
  private Set<String> without = Set.of();

  @Option(
      names = "--ablation",
      description = "Switch each correction off in turn, and print what that costs in each source.")
  private boolean ablation;

  @Option(
      names = "--fit-model",
      description =
          "Fit the numbers of the model, once for each source on all the others, and report how they do on it;"
              + " then once on all, for kb/scale.yaml.")
  private boolean fitModel;

  @Option(
      names = "--walks",
      description = {
        "Measure guided diagnosis instead: simulated people search for the cure by the guide and in three plain"
            + " ways. Needs no labelled boots. With --sources the people stand at the labelled boots, those of"
            + " DIR and of the sources, and the walk is set beside the plain list of repairs."
      })
  private boolean walks;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "With --walks: draws the people; the same number, the same people. ${DEFAULT-VALUE} when left out.")
  private long seed = 1;

  @Option(
      names = "--people",
      paramLabel = "N",
      defaultValue = "1000",
      description = "With --walks: how many people; ${DEFAULT-VALUE} when left out.")
  private int people = 1000;

  @Option(
      names = "--search",
      paramLabel = "FILE",
      description =
          "Measure the search instead, on the judged queries in this file; give it again for another list,"
              + " which is reported by itself.")
  private List<Path> searches = List.of();

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Base used = base.base();
    if (walks) {
      if (people < 1) {
        throw new ParameterException(
            Objects.requireNonNull(spec).commandLine(), "--people needs a number from 1 on");
      }
      if (sources != null) {
        return LabelledWalksTable.measure(used, withOwn(), seed, json, Output.of(spec));
      }
      return WalksTable.measure(used, seed, people, json, Output.of(spec));
    }
    if (!searches.isEmpty()) {
      return SearchReport.print(used, searches, Output.of(spec));
    }
    PrintWriter out = Output.of(spec);
    List<Source> all = withOwn();
    Scorer scorer = new Scorer(used, all, corrections());
    if (ablation) {
      return SourceTable.ablation(scorer, out);
    }
    if (fitModel) {
      return SourceTable.fitted(scorer, used, out);
    }
    Score score = asIs ? scorer.asIs() : scorer.score();
    Score everywhere = score;
    if (all.size() > 1) {
      if (!json) {
        SourceTable.print(everywhere, scorer.sources(), out);
      }
      score = everywhere.of(Scorer.OWN);
    }
    List<Scorer.Hidden> hidden = hideEach ? scorer.hideEach() : List.of();
    try {
      if (fit != null) {
        Files.writeString(
            fit, ratesYaml(used, scorer.rates(), all.get(0).logs().size()), StandardCharsets.UTF_8);
      }
      if (diagram != null) {
        Files.writeString(diagram, Reliability.svg(score.forecasts()), StandardCharsets.UTF_8);
      }
      ObjectNode node = toNode(score, hidden);
      SourceTable.add(node.putObject("sources"), everywhere, scorer.sources());
      if (json) {
        out.println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(node));
      } else {
        print(out, score, hidden);
      }
      out.flush();
      return least == null ? ExitCode.OK : compare(out, node, least);
    } catch (IOException e) {
      throw new Failure(
          ExitCode.UNREADABLE, "a file could not be written or read: " + e.getMessage());
    }
  }

  /** The boots of the folder, and then the other sources. */
  private List<Source> withOwn() {
    BootFolder.Boots boots;
    try {
      boots = BootFolder.read(folder);
    } catch (IOException e) {
      throw new Failure(
          ExitCode.UNREADABLE, "the labelled logs could not be read: " + e.getMessage());
    }
    PrintWriter out = Output.of(spec);
    if (!boots.problems().isEmpty()) {
      boots.problems().stream().map(Problem::toString).forEach(out::println);
      throw new Failure(ExitCode.BASE, "the labels have errors");
    }
    if (boots.logs().isEmpty()) {
      throw new Failure(ExitCode.UNREADABLE, "no labelled log in " + folder);
    }
    List<Source> all = new ArrayList<>(List.of(new Source(Scorer.OWN, boots.logs())));
    all.addAll(others(out));
    return all;
  }

  private List<Source> others(PrintWriter out) {
    if (sources == null) {
      return List.of();
    }
    if (!Files.isDirectory(sources)) {
      out.println("no sources measured: there is no folder " + sources);
      return List.of();
    }
    try {
      SourceFolder.Sources read = SourceFolder.read(sources, judged);
      read.problems().stream().map(Problem::toString).forEach(out::println);
      return read.sources();
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the sources could not be read: " + e.getMessage());
    }
  }

  private Corrections corrections() {
    try {
      return Corrections.without(without);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(
          Objects.requireNonNull(spec).commandLine(),
          e.getMessage() + "; there are " + String.join(", ", Corrections.NAMES));
    }
  }

  private static void print(PrintWriter out, Score score, List<Scorer.Hidden> hidden) {
    out.printf(Locale.ROOT, "%d labelled boots%n%n", score.results().size());
    row(out, "first cause right", score.top1());
    row(out, "right among the first three", score.top3());
    row(out, "mean reciprocal rank", score.meanReciprocalRank());
    row(out, "stage right", score.stageAccuracy());
    out.printf(
        Locale.ROOT,
        "  %-34s %d of %d%n",
        "false alarms on healthy boots",
        score.falseAlarms().size(),
        score.healthy());
    out.printf(
        Locale.ROOT,
        "  %-34s %d of %d%n",
        "unlisted causes called so",
        score.unlistedRight(),
        score.unlisted());
    row(out, "Brier score", Metrics.brier(score.forecasts()));
    row(out, "calibration error", Metrics.calibrationError(score.forecasts()));
    out.println();
    out.print(Reliability.text(score.forecasts()));
    out.println();
    if (!score.misses().isEmpty()) {
      out.println("Misses: label, and what came out (probability)");
      for (Result miss : score.misses()) {
        out.printf(
            Locale.ROOT,
            "  %s%n      is %s; came out %s (%.2f): %s%n",
            miss.label().name(),
            miss.label().label(),
            miss.verdict(),
            miss.topProbability(),
            String.join(", ", miss.top()));
      }
      out.println();
    }
    List<Result> stages = score.results().stream().filter(r -> !r.stageRight()).toList();
    if (!stages.isEmpty()) {
      out.println("Stage wrong:");
      stages.forEach(
          r ->
              out.printf(
                  "  %s: is %s, came out %s%n",
                  r.label().name(), r.label().stage().word(), r.stage().word()));
      out.println();
    }
    if (!hidden.isEmpty()) {
      long right = hidden.stream().filter(Scorer.Hidden::right).count();
      out.printf(
          Locale.ROOT,
          "With its fault hidden: %d of %d come out as unlisted or as a general cause (%.3f)%n",
          right,
          hidden.size(),
          right / (double) hidden.size());
      hidden.stream()
          .filter(h -> !h.right())
          .forEach(
              h ->
                  out.printf(
                      Locale.ROOT,
                      "  %s: %s (%.2f)%n",
                      h.label().name(),
                      h.said(),
                      h.probability()));
    }
  }

  private static void row(PrintWriter out, String what, double value) {
    out.printf(Locale.ROOT, "  %-34s %.3f%n", what, value);
  }

  private static ObjectNode toNode(Score score, List<Scorer.Hidden> hidden) {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("boots", score.results().size());
    node.put("top1", score.top1());
    node.put("top3", score.top3());
    node.put("meanReciprocalRank", score.meanReciprocalRank());
    node.put("stage", score.stageAccuracy());
    node.put("healthy", score.healthy());
    node.put("falseAlarms", score.falseAlarms().size());
    node.put("unlisted", score.unlisted());
    node.put("unlistedRight", score.unlistedRight());
    node.put("brier", Metrics.brier(score.forecasts()));
    node.put("calibrationError", Metrics.calibrationError(score.forecasts()));
    if (!hidden.isEmpty()) {
      node.put(
          "hideEach",
          hidden.stream().filter(Scorer.Hidden::right).count() / (double) hidden.size());
    }
    ArrayNode misses = node.putArray("misses");
    for (Result miss : score.misses()) {
      ObjectNode each = misses.addObject();
      each.put("boot", miss.label().name());
      each.put("label", miss.label().label());
      each.put("verdict", miss.verdict());
      miss.top().forEach(each.putArray("top")::add);
    }
    return node;
  }

  /** Measures for which more is better, and those for which less is. */
  private static final Map<String, Boolean> MORE_IS_BETTER =
      Map.of(
          "top1",
          true,
          "top3",
          true,
          "stage",
          true,
          "hideEach",
          true,
          "unlistedRight",
          true,
          "falseAlarms",
          false,
          "calibrationError",
          false);

  private static int compare(PrintWriter out, ObjectNode now, Path least) throws IOException {
    var recorded = new ObjectMapper().readTree(Files.readString(least));
    int worse = 0;
    for (String name : new java.util.TreeSet<>(MORE_IS_BETTER.keySet())) {
      if (recorded.has(name) && now.has(name)) {
        double before = recorded.get(name).asDouble();
        double after = now.get(name).asDouble();
        boolean more = MORE_IS_BETTER.getOrDefault(name, true);
        if (more ? after < before - 1e-9 : after > before + 1e-9) {
          out.printf(
              Locale.ROOT, "worse than recorded: %s is %.4f, was %.4f%n", name, after, before);
          worse++;
        }
      }
    }
    worse += SourceTable.compare(out, now.path("sources"), recorded.path("sources"));
    out.println(
        worse == 0
            ? "no measure is worse than recorded"
            : worse + " measures are worse than recorded");
    out.flush();
    return worse == 0 ? ExitCode.OK : 1;
  }

  /** The rates as YAML, with counts, for readers as well as for the program. */
  private static String ratesYaml(Base base, Map<String, Rate> rates, int boots) {
    StringBuilder yaml = new StringBuilder();
    yaml.append(
        "# Written by 'score --fit': in how many labelled boots of other causes each sign was seen.\n");
    yaml.append(
        "# A sign that is not listed was seen in none, and keeps the chance of its word.\n");
    yaml.append("boots: ").append(boots).append("\nsigns:\n");
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        Rate rate = rates.get(sign.id());
        if (rate != null) {
          yaml.append("  - {fault: ").append(fault.id());
          yaml.append(", sign: ").append(sign.id().substring(fault.id().length() + 1));
          yaml.append(", seen: ")
              .append(rate.seen())
              .append(", of: ")
              .append(rate.boots())
              .append(", rivals-seen: ")
              .append(rate.rivalsSeen())
              .append(", rivals: ")
              .append(rate.rivals())
              .append("}\n");
        }
      }
    }
    return yaml.toString();
  }
}
