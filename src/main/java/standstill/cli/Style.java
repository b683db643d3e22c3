package standstill.cli;

import java.nio.charset.Charset;

/**
 * How a terminal is written to: colours only where a person reads, and signs that its character set
 * has. Colour never says anything that the text doesn't say too.
 *
 * @param colour whether escape codes for colour may be written
 * @param unicode whether signs beyond ASCII may be written
 */
record Style(boolean colour, boolean unicode) {
  /**
   * The style of this process's standard output. The variable NO_COLOR switches colours off, as is
   * custom.
   */
  static Style detect() {
    boolean terminal = System.console() != null && isTerminal();
    boolean colour =
        terminal && System.getenv("NO_COLOR") == null && !"dumb".equals(System.getenv("TERM"));
    return new Style(colour, outputCharset().newEncoder().canEncode('●'));
  }

  private static boolean isTerminal() {
    // From JDK 22 on a console exists even when output is redirected; it then says so itself.
    try {
      Object answer = java.io.Console.class.getMethod("isTerminal").invoke(System.console());
      return Boolean.TRUE.equals(answer);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  /** The character set of standard output: the locale's. */
  static Charset outputCharset() {
    String name =
        System.getProperty("stdout.encoding", System.getProperty("native.encoding", "UTF-8"));
    String locale = localeName();
    if (locale.toUpperCase(java.util.Locale.ROOT).replace("-", "").contains("UTF8")) {
      return java.nio.charset.StandardCharsets.UTF_8;
    }
    return Charset.isSupported(name) ? Charset.forName(name) : Charset.defaultCharset();
  }

  private static String localeName() {
    for (String variable : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
      String value = System.getenv(variable);
      if (value != null && !value.isEmpty()) {
        return value;
      }
    }
    return "";
  }

  String bold(String text) {
    return wrap(VisibleWriter.Mark.BOLD, text);
  }

  String faint(String text) {
    return wrap(VisibleWriter.Mark.FAINT, text);
  }

  String warn(String text) {
    return wrap(VisibleWriter.Mark.WARN, text);
  }

  private String wrap(VisibleWriter.Mark mark, String text) {
    return colour
        ? VisibleWriter.mark(mark) + text + VisibleWriter.mark(VisibleWriter.Mark.PLAIN)
        : text;
  }
}
