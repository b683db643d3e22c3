package standstill.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.search.Found;
import standstill.search.Results;
import standstill.search.Search;
import standstill.search.Segment;

/** Searches the fault base. */
@Command(
    name = "search",
    mixinStandardHelpOptions = true,
    description = {
      "Searches causes, symptoms, checks and false trails.",
      "Words, a message, or a whole line of a log will do; entries whose signs match the line come first."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill search black screen after the menu",
      "  standstill search -- 'Kernel panic - not syncing: exitcode=0x00007f00'",
    })
final class SearchCommand implements Callable<Integer> {
  private static final int LARGEST = 100;

  @Parameters(arity = "1..*", paramLabel = "WORDS", description = "What to look for.")
  private List<String> words = List.of();

  @Option(names = "--json", description = "Write the results as JSON.")
  private boolean json;

  @Option(
      names = "--top",
      paramLabel = "N",
      defaultValue = "10",
      description = "How many to show at the most; 10 when left out.")
  private int top;

  @Mixin private final BaseOption base = new BaseOption();
  @Mixin private final IndexOption index = new IndexOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    if (top < 1 || top > LARGEST) {
      throw new Failure(ExitCode.USAGE, "--top lies between 1 and " + LARGEST);
    }
    PrintWriter out = Output.of(spec);
    Search search = index.over(base.folder(), Output.errors(spec)).apply(base.base());
    Results results = search.find(String.join(" ", words), Set.of(), top);
    if (json) {
      out.println(json(results));
    } else {
      print(results, out);
    }
    out.flush();
    return ExitCode.OK;
  }

  private static void print(Results results, PrintWriter out) {
    Style style = Style.detect();
    for (Results.Reading reading : results.read()) {
      Paragraph.lines("", "No entry has '" + reading.typed() + "'; read as '" + reading.as() + "'.")
          .forEach(out::println);
    }
    if (results.found().isEmpty()) {
      out.println("Nothing found, and nothing similar.");
      return;
    }
    if (results.nearest()) {
      out.println("Nothing found. The nearest titles:");
    }
    for (Found found : results.found()) {
      out.println();
      Paragraph.lines("", Segment.join(found.title()))
          .forEach(line -> out.println(style.bold(line)));
      String sign = found.bySign() ? ", a sign of it matches" : "";
      out.println("  " + found.kind().title() + sign + ": show " + found.id());
      if (!found.excerpt().isEmpty()) {
        String text =
            found.excerpt().stream()
                .map(s -> s.matched() ? "*" + s.text() + "*" : s.text())
                .collect(Collectors.joining());
        Paragraph.lines("  " + found.where() + ": ", "  ", text).forEach(out::println);
      }
    }
    if (results.total() > results.found().size()) {
      out.println();
      out.println((results.total() - results.found().size()) + " more; --top N shows them.");
    }
  }

  private static String json(Results results) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode root = mapper.createObjectNode();
    root.put("query", results.query());
    root.put("total", results.total());
    root.put("nearest", results.nearest());
    ArrayNode read = root.putArray("read");
    results.read().forEach(r -> read.addObject().put("typed", r.typed()).put("as", r.as()));
    ArrayNode list = root.putArray("found");
    for (Found found : results.found()) {
      ObjectNode each = list.addObject();
      each.put("kind", found.kind().word());
      each.put("id", found.id());
      each.put("title", Segment.join(found.title()));
      each.put("by-sign", found.bySign());
      each.put("where", found.where());
      ArrayNode excerpt = each.putArray("excerpt");
      found
          .excerpt()
          .forEach(s -> excerpt.addObject().put("text", s.text()).put("matched", s.matched()));
    }
    return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root);
  }
}
