package standstill.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.guide.Course;
import standstill.log.BootLog;
import standstill.report.Diagnoser;
import standstill.report.Report;

/** Walks a person from a log, or from what is seen, to a repair. */
@Command(
    name = "walk",
    mixinStandardHelpOptions = true,
    description = {
      "Walks you to the repair, one step at a time.",
      "With a log it starts from the log's likely causes, without one from what the screen shows. Answer with a"
          + " number; w says why a step comes now, b goes back, s skips, l says that you lack something,"
          + " q ends. Every question may be answered with \"I don't know\"."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill walk boot.log",
      "  standstill walk --save walk.json boot.log",
      "  standstill walk --resume walk.json boot.log",
      "  standstill walk",
    })
final class WalkCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The log; nothing starts from what you see. Answers come from standard input.")
  private @Nullable String file;

  @Option(
      names = "--boot",
      paramLabel = "N",
      defaultValue = "0",
      description = "Which boot of the log, from 1; the last when left out.")
  private int boot;

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description =
          "Write the walk to this file at the end, as JSON: ids and answers, no log text.")
  private @Nullable Path save;

  @Option(
      names = "--resume",
      paramLabel = "FILE",
      description = "Go on with a walk that was saved; give the same log again.")
  private @Nullable Path resume;

  @Mixin private final SystemOption system = new SystemOption();

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    if ("-".equals(file)) {
      throw new Failure(
          ExitCode.USAGE, "walk reads answers from standard input; give the log as a file");
    }
    Diagnoser diagnoser = new Diagnoser(base.base());
    Optional<Report> report = Optional.empty();
    if (file != null) {
      BootLog log = diagnoser.read(DiagnoseCommand.InputFile.read(file));
      if (boot < 0 || boot > log.boots().size()) {
        throw new Failure(
            ExitCode.USAGE, "no boot " + boot + " in this log; it has " + log.boots().size());
      }
      report = Optional.of(diagnoser.diagnose(log, boot));
    }
    Course start = resume == null ? Course.NEW : WalkFile.read(resume, diagnoser.base());
    Dialogue dialogue =
        new Dialogue(
            diagnoser.base(),
            report,
            system.words(diagnoser.base()),
            new BufferedReader(new InputStreamReader(System.in, Style.outputCharset())),
            Output.of(spec),
            Style.detect());
    Course end = dialogue.walk(start, resume != null);
    if (save != null) {
      WalkFile.save(save, end);
      dialogue.say(
          "", "Saved. Go on with: walk --resume " + save + (file == null ? "" : " " + file));
    }
    return ExitCode.OK;
  }
}
