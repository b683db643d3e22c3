package standstill.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import standstill.base.Base;
import standstill.score.Walks;

/** Simulated walks as a table or as JSON. */
final class WalksTable {
  /** The family whose faults are drawn: the one with the most of them. */
  private static final String FAMILY = "linux";

  private WalksTable() {}

  static int measure(Base base, long seed, int people, boolean json, PrintWriter out) {
    boolean terminal = Output.showsProgress();
    List<Walks.Measure> measures =
        new Walks(base, FAMILY)
            .measure(
                seed,
                people,
                done -> {
                  if (terminal && (done % 10 == 0 || done == people)) {
                    Output.progress(done + " of " + people + " people", done == people);
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

  private static void print(PrintWriter out, List<Walks.Measure> measures, long seed) {
    out.printf(
        Locale.ROOT,
        "%d simulated people, seed %d; minutes to the cure, giving up included%n",
        measures.get(0).people(),
        seed);
    for (Walks.Start start : Walks.Start.values()) {
      out.printf(
          Locale.ROOT,
          "%n%-40s %8s %8s %7s %8s %10s%n",
          start.title(),
          "mean",
          "90th",
          "steps",
          "cured",
          "needless");
      for (Walks.Measure each : measures) {
        if (each.start() == start) {
          out.printf(
              Locale.ROOT,
              "  %-38s %8.1f %8.1f %7.2f %6.1f %% %8.2f %%%n",
              each.way().title(),
              each.minutes(),
              each.minutes90(),
              each.steps(),
              each.cured() * 100,
              each.needless() * 100);
        }
      }
      out.printf(
          Locale.ROOT,
          "  the guide's minutes are %.2f of the best other way's%n",
          Walks.ratio(measures, start));
    }
    out.println();
    out.println(
        "needless: share of all steps that were risky repairs of a fault that was not there");
  }

  private static String toJson(List<Walks.Measure> measures, long seed) {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode node = mapper.createObjectNode();
    node.put("seed", seed);
    node.put("people", measures.get(0).people());
    for (Walks.Start start : Walks.Start.values()) {
      ArrayNode ways = node.putArray(word(start));
      for (Walks.Measure each : measures) {
        if (each.start() == start) {
          ObjectNode way = ways.addObject();
          way.put("way", word(each.way()));
          way.put("minutes", each.minutes());
          way.put("minutes90", each.minutes90());
          way.put("steps", each.steps());
          way.put("cured", each.cured());
          way.put("needlessRisk", each.needless());
        }
      }
      node.put(word(start) + "-ratio", Walks.ratio(measures, start));
    }
    try {
      return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String word(Enum<?> name) {
    return name.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
