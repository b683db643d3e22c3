package standstill.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.mine.Candidate;
import standstill.mine.Generalised;
import standstill.mine.Miner;
import standstill.mine.Stray;
import standstill.report.Diagnoser;

/** Lists candidates for new signs. */
@Command(
    name = "propose",
    mixinStandardHelpOptions = true,
    description = {
      "Lists lines of unsolved logs that nothing in the base explains.",
      "Lines that say the same are put together over all logs: numbers, names of devices and the like may"
          + " differ. Each candidate comes with a pattern for a sign, which matches all its lines. First come"
          + " those that stand in many logs, speak of failure and stand near the end of the boot; last come"
          + " those that labelled healthy boots print too."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill propose unsolved/ --base kb",
      "  standstill propose unsolved/ --base kb --least 2 --top 5",
      "  standstill propose boot.log --json",
      "",
      "A log is a .log, .log.gz or .txt file; of several boots in it the last one",
      "counts. 'new fault --from LOG:LINE' makes an entry of a line.",
    })
final class ProposeCommand implements Callable<Integer> {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @Parameters(paramLabel = "LOG|DIR", description = "A log, or a folder of logs.")
  private String place = "";

  @Option(
      names = "--least",
      paramLabel = "N",
      defaultValue = "1",
      description = "Only lines that stand in at least N logs; ${DEFAULT-VALUE} when left out.")
  private int least = 1;

  @Option(
      names = "--top",
      paramLabel = "N",
      defaultValue = "10",
      description = "How many candidates to show at the most; ${DEFAULT-VALUE} when left out.")
  private int top = 10;

  @Option(
      names = "--json",
      description = "Write the candidates as JSON (docs/reference/propose-and-new.md).")
  private boolean json;

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    if (least < 1 || top < 1) {
      throw new Failure(ExitCode.USAGE, (least < 1 ? "--least" : "--top") + " is at least 1");
    }
    List<Path> files = UnsolvedLogs.of(path());
    Diagnoser diagnoser = new Diagnoser(base.base());
    UnsolvedLogs logs = new UnsolvedLogs(diagnoser);
    Miner miner = new Miner();
    logs.read(files, miner::add);
    if (logs.logs() == 0) {
      throw new Failure(
          ExitCode.UNREADABLE, "no boot log to read:\n" + String.join("\n", logs.leftOut()));
    }
    List<List<String>> healthy = HealthyBoots.beside(base.folder(), diagnoser);
    List<Candidate> candidates = miner.candidates(least, healthy);
    PrintWriter out = Output.of(spec);
    if (json) {
      out.println(toJson(logs, candidates, healthy.size(), miner.leftOut()).toPrettyString());
    } else {
      print(out, logs, candidates, healthy.size());
      if (miner.leftOut() > 0) {
        out.println(miner.leftOut() + " lines were left out: too many different ones");
      }
    }
    out.flush();
    return ExitCode.OK;
  }

  private Path path() {
    try {
      return Path.of(place);
    } catch (InvalidPathException e) {
      throw new Failure(ExitCode.UNREADABLE, "no file or folder: " + place);
    }
  }

  private void print(
      PrintWriter out, UnsolvedLogs logs, List<Candidate> candidates, int healthyBoots) {
    Style style = Style.detect();
    out.printf(
        "%s, %s; nothing in the base explains %s of them%n",
        count(logs.logs(), "log"), count(logs.lines(), "line"), logs.strays());
    logs.leftOut().forEach(reason -> out.println("left out: " + reason));
    for (int i = 0; i < Math.min(top, candidates.size()); i++) {
      Candidate candidate = candidates.get(i);
      Stray first = candidate.examples().get(0);
      List<String> lines = new ArrayList<>();
      String number = (i + 1) + ". ";
      Paragraph.lines(number, candidate.template()).forEach(l -> lines.add(style.bold(l)));
      lines.addAll(Paragraph.lines("   ", standing(candidate, healthyBoots)));
      lines.add("   as in " + first.log() + ":" + first.line());
      lines.addAll(Paragraph.lines("     ", first.message()));
      lines.add("   sign: '" + candidate.proposal().pattern().source().replace("'", "''") + "'");
      lines.addAll(Paragraph.lines("   ", proof(candidate)));
      out.println();
      lines.forEach(out::println);
    }
    out.println();
    if (candidates.isEmpty()) {
      out.println("no line is left that could become a sign");
      return;
    }
    if (candidates.size() > top) {
      out.println("and " + (candidates.size() - top) + " more; --top shows them");
    }
    if (healthyBoots == 0) {
      Paragraph.lines(
              "",
              "No labelled boots stand beside the base, so lines of healthy machines are not marked.")
          .forEach(out::println);
    }
    Stray best = candidates.get(0).examples().get(0);
    out.println("an entry for the first: new fault --from " + best.log() + ":" + best.line());
  }

  private static String standing(Candidate c, int healthyBoots) {
    StringBuilder text = new StringBuilder();
    text.append("on ")
        .append(count(c.times(), "line"))
        .append(" in ")
        .append(count(c.logs(), "log"));
    text.append(", at the stage ").append(c.stage().word());
    if (c.grave() > 0) {
      text.append("; speaks of failure");
    }
    if (c.late() > 0) {
      text.append("; near the end of the boot");
      text.append(c.logs() > 1 ? " in " + count(c.late(), "log") : "");
    }
    if (c.isHealthy()) {
      text.append("; healthy machines print this too: ");
      text.append(c.healthy()).append(" of ").append(count(healthyBoots, "labelled boot"));
    }
    return text.toString();
  }

  private static String proof(Candidate candidate) {
    return candidate.kept() == 1
        ? "made of the one text of it"
        : "matches the " + candidate.kept() + " different texts that it was made of";
  }

  private static String count(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }

  private ObjectNode toJson(
      UnsolvedLogs logs, List<Candidate> candidates, int healthyBoots, int linesLeftOut) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("logs", logs.logs());
    root.put("lines", logs.lines());
    root.put("unexplained", logs.strays());
    logs.leftOut().forEach(root.putArray("leftOut")::add);
    root.put("linesLeftOut", linesLeftOut);
    root.put("healthyBoots", healthyBoots);
    root.put("found", candidates.size());
    ArrayNode all = root.putArray("candidates");
    for (Candidate candidate : candidates.subList(0, Math.min(top, candidates.size()))) {
      ObjectNode node = all.addObject();
      node.put("template", candidate.template());
      node.put("times", candidate.times());
      node.put("logs", candidate.logs());
      node.put("stage", candidate.stage().word());
      node.put("failureIn", candidate.grave());
      node.put("nearEndIn", candidate.late());
      node.put("healthy", candidate.healthy());
      node.put("weight", candidate.weight());
      node.put("pattern", candidate.proposal().pattern().source());
      node.put("texts", candidate.kept());
      ArrayNode captures = node.putArray("captures");
      for (Generalised.Capture capture : candidate.proposal().captures()) {
        captures.addObject().put("name", capture.name()).put("value", capture.value());
      }
      ArrayNode examples = node.putArray("examples");
      for (Stray stray : candidate.examples()) {
        examples
            .addObject()
            .put("log", stray.log())
            .put("line", stray.line())
            .put("text", stray.message());
      }
    }
    return root;
  }
}
