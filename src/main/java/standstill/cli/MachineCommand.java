package standstill.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import standstill.log.BootLog;
import standstill.machine.Machine;
import standstill.report.Diagnoser;
import standstill.report.MachineJson;
import standstill.report.Picture;
import standstill.report.Sighting;

/** Prints what a log says of the machine. */
@Command(
    name = "machine",
    mixinStandardHelpOptions = true,
    description = {
      "Reads a boot log and prints the machine that it shows: controllers and their drivers, disks, what"
          + " was asked for, and who waits for whom.",
      "It says what is missing only where the log shows the part of the boot that would tell."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill machine boot.log",
      "  dmesg | standstill machine --json -",
    })
final class MachineCommand implements Callable<Integer> {
  @Mixin private final LogInput input = new LogInput();

  @Option(names = "--json", description = "Write the machine as JSON (docs/reference/json.md).")
  private boolean json;

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws JsonProcessingException {
    input.check();
    Diagnoser diagnoser = new Diagnoser(base.base());
    BootLog log = input.read(input.bytes(Output.errors(spec)), diagnoser);
    Machine machine =
        diagnoser
            .sight(log, input.boot())
            .map(Sighting::matches)
            .flatMap(matches -> matches.machine())
            .orElseThrow(
                () ->
                    new Failure(ExitCode.UNREADABLE, "no line looks like one that a boot prints"));
    PrintWriter out = Output.of(spec);
    if (json) {
      ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
      ObjectNode node = mapper.createObjectNode();
      MachineJson.write(node, machine);
      out.println(mapper.writeValueAsString(node));
    } else {
      print(out, Style.detect(), Picture.of(machine));
    }
    out.flush();
    return ExitCode.OK;
  }

  private static void print(PrintWriter out, Style style, Picture picture) {
    Paragraph.lines("", printable(picture.summary())).forEach(out::println);
    for (Picture.Part part : picture.parts()) {
      out.println();
      out.println(style.bold(part.title()));
      for (Picture.Note note : part.notes()) {
        String mark = note.trouble() ? "! " : "  ";
        String text = printable(note.text()) + lines(note.lines());
        Paragraph.lines(mark, "    ", text).forEach(out::println);
      }
    }
  }

  private static String lines(List<Integer> lines) {
    return lines.isEmpty()
        ? ""
        : " ["
            + (lines.size() == 1 ? "line " : "lines ")
            + lines.stream().map(String::valueOf).collect(Collectors.joining(", "))
            + "]";
  }

  /** Without control characters: a line of a log may hold some that a terminal obeys. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }
}
