package standstill.cli;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;

/** A command that was run in this process, with its input and output taken over. */
record CommandRun(int code, String out, String err) {
  static CommandRun of(String... args) {
    return with("", args);
  }

  static CommandRun with(String input, String... args) {
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
    try {
      CommandLine commandLine = Main.commandLine();
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      commandLine.setOut(new PrintWriter(out, true));
      commandLine.setErr(new PrintWriter(err, true));
      int code = commandLine.execute(args);
      return new CommandRun(code, out.toString(), err.toString());
    } finally {
      System.setIn(before);
    }
  }
}
