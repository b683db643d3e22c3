package standstill.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.base.yaml.EntrySchemas;
import standstill.rank.Ranker;

/** Writes the schemas that editors check the files of a base with. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    description = {
      "Writes schemas for editors, one for each kind of file of a fault base.",
      "They are JSON Schema, draft 2020-12, and know the words of the base's scale."
    })
final class SchemaCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "Folder to write them to; it is made if need be.")
  private Path folder = Path.of("");

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Map<String, String> schemas = EntrySchemas.of(base.base().scale(), Ranker.MODEL_NUMBERS);
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, String> each : schemas.entrySet()) {
        Files.writeString(folder.resolve(each.getKey()), each.getValue());
      }
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, folder + " could not be written: " + e.getMessage());
    }
    PrintWriter out = Output.of(spec);
    out.println(schemas.size() + " schemas written to " + folder);
    out.flush();
    return ExitCode.OK;
  }
}
