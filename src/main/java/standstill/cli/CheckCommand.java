package standstill.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.audit.Audit;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.score.LabelledLog;
import standstill.store.BaseFolder;
import standstill.store.BootFolder;
import standstill.text.Problem;

/** Checks a fault base and lists every problem with its place. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Checks a fault base.",
      "Reads all its files and its labelled boots, tests every sign against its own texts, and holds the base"
          + " as a whole to the rules of docs/reference/check.md. Every problem is listed as file:line:column."
          + " Errors make the base unusable; warnings are for somebody to look at. Exit code 0 when there is no"
          + " error, 4 when there is one."
    })
final class CheckCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "DIR",
      description = "Folder of the base; the one that the program carries when left out.")
  private @Nullable Path folder;

  @Option(names = "--json", description = "Write the problems as JSON.")
  private boolean json;

  @Option(names = "--strict", description = "End with exit code 4 on warnings too.")
  private boolean strict;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    List<Finding> findings = new ArrayList<>();
    Base base;
    try {
      Loaded loaded = folder == null ? BaseFolder.builtIn() : BaseFolder.read(folder);
      base = loaded.base();
      BootFolder.Boots boots = boots();
      boots.problems().forEach(p -> findings.add(Finding.ofFile(p)));
      findings.addAll(Audit.findings(loaded, boots.logs(), LocalDate.now()));
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the fault base could not be read: " + e.getMessage());
    }
    findings.sort(null);
    long errors = findings.stream().filter(f -> f.problem().isError()).count();
    long warnings = findings.size() - errors;
    PrintWriter out = Output.of(spec);
    if (json) {
      out.println(CheckReport.json(base, findings));
    } else {
      findings.forEach(finding -> out.println(finding.problem()));
      out.printf(
          "%d faults, %d checks, %d symptoms, %d false trails, %d walks: %s, %s%n",
          base.faults().size(),
          base.checks().size(),
          base.symptoms().size(),
          base.trails().size(),
          base.walks().size(),
          count(errors, "error"),
          count(warnings, "warning"));
    }
    out.flush();
    return errors > 0 || (strict && warnings > 0) ? ExitCode.BASE : ExitCode.OK;
  }

  /** The labelled boots beside the base, if there are any. */
  private BootFolder.Boots boots() throws IOException {
    Path boots = folder == null ? null : folder.resolve("boots");
    return boots != null && Files.isDirectory(boots)
        ? BootFolder.read(boots)
        : new BootFolder.Boots(List.<LabelledLog>of(), List.<Problem>of());
  }

  private static String count(long number, String what) {
    return number == 0 ? "no " + what + "s" : number == 1 ? "1 " + what : number + " " + what + "s";
  }
}
