package standstill.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.audit.Audit;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.store.BaseFolder;
import standstill.text.Problem;

/** Checks a fault base and lists every problem with its place. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Checks a fault base.",
      "Reads all its files, tests every sign against its own texts, and lists every problem as"
          + " file:line:column. Exit code 0 when there is none, 4 when there is an error."
    })
final class CheckCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "DIR",
      description = "Folder of the base; the one that the program carries when left out.")
  private @Nullable Path folder;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Loaded loaded;
    try {
      loaded = folder == null ? BaseFolder.builtIn() : BaseFolder.read(folder);
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the fault base could not be read: " + e.getMessage());
    }
    List<Problem> problems = new ArrayList<>(loaded.problems());
    problems.addAll(Audit.problems(loaded.base()));
    problems.sort(null);
    PrintWriter out = Output.of(spec);
    problems.forEach(out::println);
    long errors = problems.stream().filter(Problem::isError).count();
    Base base = loaded.base();
    out.printf(
        "%d faults, %d checks, %d symptoms, %d false trails, %d walks: %s%n",
        base.faults().size(),
        base.checks().size(),
        base.symptoms().size(),
        base.trails().size(),
        base.walks().size(),
        errors == 0 ? "no errors" : errors == 1 ? "1 error" : errors + " errors");
    out.flush();
    return errors == 0 ? ExitCode.OK : ExitCode.BASE;
  }
}
