package standstill.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import standstill.log.BootLog;
import standstill.log.Gunzip;
import standstill.log.TooLargeException;
import standstill.report.Diagnoser;
import standstill.report.JsonReport;
import standstill.report.Report;

/** Diagnoses a boot log. */
@Command(
    name = "diagnose",
    mixinStandardHelpOptions = true,
    description = {
      "Reads a boot log and names the likely causes of the stop.",
      "Any text that a boot printed will do: a serial capture, a kernel ring buffer, a journal export, a"
          + " paste from a forum, the last screenful typed from a photo. Compressed (gzip) files are read"
          + " as they are. Nothing leaves this machine."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill diagnose boot.log",
      "  dmesg | standstill diagnose -",
      "  standstill diagnose --json --top 3 boot.log.gz",
    })
final class DiagnoseCommand implements Callable<Integer> {
  @Mixin private final LogInput input = new LogInput();

  @Option(names = "--json", description = "Write the report as JSON (docs/reference/json.md).")
  private boolean json;

  @Option(
      names = "--top",
      paramLabel = "N",
      defaultValue = "3",
      description = "How many causes to show at the most; 3 when left out.")
  private int top;

  @Mixin private final SystemOption system = new SystemOption();

  /** Bytes that take more than a few seconds to read. */
  private static final int LARGE = 8 << 20;

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    input.check();
    if (top < 1) {
      throw new Failure(ExitCode.USAGE, "--top is at least 1");
    }
    byte[] bytes = input.bytes(Output.errors(spec));
    if (bytes.length >= LARGE) {
      PrintWriter errors = Output.errors(spec);
      errors.println("reading " + (bytes.length >> 20) + " MB; this takes a while");
      errors.flush();
    }
    Diagnoser diagnoser = new Diagnoser(base.base());
    BootLog log = input.read(bytes, diagnoser);
    Report report =
        diagnoser
            .diagnose(log, input.boot())
            .saying(diagnoser.base(), system.words(diagnoser.base()));
    PrintWriter out = Output.of(spec);
    out.print(
        json
            ? JsonReport.write(report, top) + System.lineSeparator()
            : new TextReport(Style.detect()).write(report, top));
    out.flush();
    return ExitCode.OK;
  }

  /** Reads the log, with its bounds. */
  static final class InputFile {
    /** Largest log that is read, in bytes after expansion. */
    static final long LARGEST = 100L << 20;

    private InputFile() {}

    /** The same without a word about damage, for many logs at once. */
    static byte[] read(String name) {
      return read(name, new PrintWriter(Writer.nullWriter()));
    }

    /**
     * The log's bytes.
     *
     * @param err where it is said that a compressed log is damaged
     */
    static byte[] read(String name, PrintWriter err) {
      try {
        byte[] bytes;
        if (name.equals("-")) {
          bytes = readBounded(System.in);
        } else {
          Path path = Path.of(name);
          if (Files.isDirectory(path)) {
            throw new Failure(ExitCode.UNREADABLE, name + " is a folder; name a file in it");
          }
          try (InputStream in = Files.newInputStream(path)) {
            bytes = readBounded(in);
          }
        }
        Gunzip.Expanded expanded = Gunzip.read(bytes, LARGEST);
        if (!expanded.whole()) {
          err.println(
              "Caution: "
                  + (name.equals("-") ? "the input" : name)
                  + " is a damaged gzip file, or was cut short: only its first "
                  + expanded.bytes().length
                  + " bytes could be read. What stood behind them is not in the diagnosis.");
          err.flush();
        }
        return expanded.bytes();
      } catch (NoSuchFileException e) {
        throw new Failure(ExitCode.UNREADABLE, "no file: " + name);
      } catch (TooLargeException e) {
        throw tooLarge(name);
      } catch (IOException | java.nio.file.InvalidPathException e) {
        throw new Failure(ExitCode.UNREADABLE, name + " could not be read: " + e.getMessage());
      }
    }

    private static byte[] readBounded(InputStream in) throws IOException {
      byte[] bytes = in.readNBytes((int) LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw tooLarge("the input");
      }
      return bytes;
    }

    private static Failure tooLarge(String name) {
      return new Failure(
          ExitCode.UNREADABLE,
          name
              + " is larger than "
              + (LARGEST >> 20)
              + " MB; keep the last boot of it, for example with 'tail -n 20000'");
    }
  }
}
