package standstill.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Where a command prints to: the one way to the terminal, which shows what would steer it, see
 * {@link VisibleWriter}.
 */
final class Output extends PrintWriter {
  private Output(Writer to) {
    super(new VisibleWriter(to), true);
  }

  /** Writes to a stream. */
  static PrintWriter onto(OutputStream to) {
    return new Output(new PrintWriter(to, true));
  }

  /**
   * The command's standard output; the process's own when the command was made outside of a command
   * line.
   */
  static PrintWriter of(@Nullable CommandSpec spec) {
    return spec == null ? onto(System.out) : visible(spec.commandLine().getOut());
  }

  /** The same for what is not a result. */
  static PrintWriter errors(@Nullable CommandSpec spec) {
    return spec == null ? onto(System.err) : errors(spec.commandLine());
  }

  /** Where a command line prints what is not a result. */
  static PrintWriter errors(CommandLine commandLine) {
    return visible(commandLine.getErr());
  }

  private static PrintWriter visible(PrintWriter writer) {
    return writer instanceof Output ? writer : new Output(writer);
  }

  /**
   * Takes over the process's streams, so that nothing passes by: neither what libraries log, nor
   * what a command line prints of its own accord.
   */
  static void takeOver(CommandLine commandLine) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    commandLine.setOut(onto(out));
    commandLine.setErr(onto(err));
    System.setOut(stream(out));
    System.setErr(stream(err));
  }

  /** A stream onto another one. */
  static PrintStream stream(OutputStream to) {
    Charset charset = Charset.defaultCharset();
    return new PrintStream(new Lines(onto(to), charset), true, charset);
  }

  /** Whether somebody looks on: words on progress are for a terminal. */
  static boolean showsProgress() {
    return System.console() != null && Style.detect().colour();
  }

  /** Says how far something long has come, on the line that the last such word stands on. */
  static void progress(String text, boolean last) {
    System.err.print(VisibleWriter.mark(VisibleWriter.Mark.LINE_AGAIN) + text + (last ? "\n" : ""));
    System.err.flush();
  }

  /** Bytes that are put together to characters again, a line or a flush at a time. */
  private static final class Lines extends OutputStream {
    private final PrintWriter to;
    private final Charset charset;
    private final ByteArrayOutputStream held = new ByteArrayOutputStream();

    Lines(PrintWriter to, Charset charset) {
      this.to = to;
      this.charset = charset;
    }

    @Override
    public synchronized void write(int b) {
      held.write(b);
    }

    @Override
    public synchronized void write(byte[] bytes, int from, int length) {
      held.write(bytes, from, length);
    }

    @Override
    public synchronized void flush() {
      to.print(held.toString(charset));
      to.flush();
      held.reset();
    }

    @Override
    public void close() throws IOException {
      flush();
      to.close();
    }
  }
}
