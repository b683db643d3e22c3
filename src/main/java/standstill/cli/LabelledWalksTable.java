package standstill.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import standstill.base.Base;
import standstill.score.LabelledWalks;
import standstill.score.Source;

/** Walks of people at labelled boots as a table or as JSON. */
final class LabelledWalksTable {
  /** People at every boot: enough for luck to even out over a source. */
  private static final int EACH = 5;

  private LabelledWalksTable() {}

  static int measure(Base base, List<Source> sources, long seed, boolean json, PrintWriter out) {
    boolean terminal = Output.showsProgress();
    int boots = sources.stream().mapToInt(source -> source.logs().size()).sum();
    List<LabelledWalks.Measure> measures =
        new LabelledWalks(base)
            .measure(
                sources,
                seed,
                EACH,
                done -> {
                  if (terminal) {
                    Output.progress(done + " of " + boots + " boots", done == boots);
                  }
                });
    if (json) {
      out.println(toJson(measures, seed));
    } else {
      print(out, measures, seed);
    }
    out.flush();
    return ExitCode.OK;
  }

  private static void print(PrintWriter out, List<LabelledWalks.Measure> measures, long seed) {
    out.printf(Locale.ROOT, "%d people at every labelled boot, seed %d%n%n", EACH, seed);
    out.printf(
        Locale.ROOT,
        "%-10s %-6s %7s %9s %7s %7s %8s %8s %8s%n",
        "source",
        "way",
        "people",
        "cured",
        "false",
        "risky",
        "in vain",
        "minutes",
        "charged");
    for (LabelledWalks.Measure each : measures) {
      out.printf(
          Locale.ROOT,
          "%-10s %-6s %7d %7.1f %% %7d %7d %8d %8.1f %8.1f%n",
          each.source(),
          each.guided() ? "walk" : "list",
          each.people(),
          100.0 * each.cured() / Math.max(1, each.people()),
          each.falseEndings(),
          each.risky(),
          each.riskyInVain(),
          each.minutes(),
          each.charged());
    }
    out.println();
    out.println("cured: a lasting repair helped; false: handed over with one left");
    out.println("in vain: grave repairs of a fault that was not there");
    out.println("charged: minutes, and 240 more for who is not cured");
  }

  private static String toJson(List<LabelledWalks.Measure> measures, long seed) {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode node = mapper.createObjectNode();
    node.put("seed", seed);
    node.put("each", EACH);
    ArrayNode rows = node.putArray("measures");
    for (LabelledWalks.Measure each : measures) {
      rows.addObject()
          .put("source", each.source())
          .put("way", each.guided() ? "walk" : "list")
          .put("people", each.people())
          .put("cured", each.cured())
          .put("falseEndings", each.falseEndings())
          .put("risky", each.risky())
          .put("riskyInVain", each.riskyInVain())
          .put("minutes", each.minutes())
          .put("charged", each.charged());
    }
    try {
      return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
