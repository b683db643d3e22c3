package standstill.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.decode.Decoder;
import standstill.decode.Meaning;

/** Explains the codes in a line, or a code alone. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description = {
      "Says what the codes in a log line mean, and which standard or source says so.",
      "A code alone gets every reading that its form allows; in a line the words around it tell which one"
          + " is meant. Each quoted argument is read for itself; - reads lines from standard input. Put --"
          + " before an argument that begins with a minus."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill explain 0x7f00",
      "  standstill explain -- -110",
      "  standstill explain 'VFS: Cannot open root device \"sda1\" or unknown-block(0,0): error -6'",
    })
final class ExplainCommand implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "CODE|LINE",
      description = "A code, or a line of a log in quotes.")
  private List<String> texts = List.of();

  @Option(names = "--json", description = "Write the meanings as JSON (docs/reference/json.md).")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws JsonProcessingException {
    List<String> read =
        texts.equals(List.of("-"))
            ? new String(
                    DiagnoseCommand.InputFile.read("-"), java.nio.charset.StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.isBlank())
                .toList()
            : texts;
    PrintWriter out = Output.of(spec);
    if (json) {
      out.println(toJson(read));
    } else {
      read.forEach(text -> print(out, text));
    }
    out.flush();
    return ExitCode.OK;
  }

  /** The readings of a code that stands alone, or else the codes in a line. */
  private static List<Meaning> meanings(String text) {
    List<Meaning> alone =
        Decoder.explainCode(text).stream().filter(m -> m.code().equals(text.strip())).toList();
    return alone.isEmpty() ? Decoder.explain(text) : alone;
  }

  private static void print(PrintWriter out, String text) {
    List<Meaning> meanings = meanings(text);
    Style style = Style.detect();
    Paragraph.lines("", text).forEach(line -> out.println(style.bold(line)));
    if (meanings.isEmpty()) {
      out.println("  no code that this program knows");
    }
    for (Meaning meaning : meanings) {
      Paragraph.lines(
              "  ",
              "      ",
              meaning.code() + " (" + meaning.kind().title() + "): " + meaning.meaning())
          .forEach(out::println);
      Paragraph.lines("      source: ", meaning.source())
          .forEach(line -> out.println(style.faint(line)));
    }
    out.println();
  }

  private static String toJson(List<String> read) throws JsonProcessingException {
    ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    ArrayNode all = mapper.createArrayNode();
    for (String text : read) {
      ObjectNode node = all.addObject();
      node.put("text", text);
      ArrayNode codes = node.putArray("codes");
      for (Meaning meaning : meanings(text)) {
        codes
            .addObject()
            .put("start", meaning.start())
            .put("end", meaning.end())
            .put("code", meaning.code())
            .put("kind", meaning.kind().word())
            .put("meaning", meaning.meaning())
            .put("source", meaning.source());
      }
    }
    return mapper.writeValueAsString(all);
  }
}
