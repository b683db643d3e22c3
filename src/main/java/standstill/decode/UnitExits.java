package standstill.decode;

import java.util.Locale;
import java.util.Optional;
import standstill.text.Pattern;

/** Exit codes of services and programs, and the results of units and jobs. */
final class UnitExits implements Codes {
  private static final String SOURCE =
      "systemd.exec(5), \"Process exit codes\"; systemd src/shared/exit-status.c";
  private static final String SHELL = "POSIX Shell Command Language, section 2.8.2, exit status";
  private static final String RESULTS = "systemd src/core/service.c, mount.c, job.c";
  private static final Table EXITS = Table.named("systemd-exit");
  private static final Table RESULT = Table.named("systemd-result");

  private static final Pattern STATUS =
      Pattern.known("code=exited,? status=(?P<code>(?P<n>\\d{1,3})(?:/(?P<name>[A-Z_]+))?)");
  private static final Pattern KILLED =
      Pattern.known(
          "code=(?:killed|dumped),? (?:status|signal)=(?P<code>(?P<n>\\d{1,2})?/?(?P<name>[A-Z0-9]+)?)");
  private static final Pattern EXIT =
      Pattern.known(
          "(?i)\\b(?:exit(?:ed)?(?: with)? (?:code|status)|exited with) ?[=:]? ?(?P<code>\\d{1,3})\\b");
  private static final Pattern WORD = Pattern.known("\\bresult '(?P<code>[a-z-]{4,20})'");

  @Override
  public void inLine(Findings line) {
    line.each(
        STATUS,
        p ->
            EXITS
                .number(Long.parseLong(p.get("n")))
                .filter(r -> !p.has("name") || r.name().equals(p.get("name")))
                .ifPresentOrElse(
                    r -> line.add(p, Kind.EXIT_CODE, service(r), SOURCE),
                    () ->
                        line.add(
                            p,
                            Kind.EXIT_CODE,
                            "exit code " + p.get("n") + "; its meaning is the program's own",
                            SOURCE)));
    line.each(
        KILLED,
        p -> {
          Optional<Table.Row> signal =
              p.has("n")
                  ? Signals.number(Long.parseLong(p.get("n")))
                  : Signals.name("SIG" + p.get("name"));
          signal.ifPresent(
              r ->
                  line.add(
                      p, Kind.SIGNAL, "killed by " + r.name() + ": " + r.text(), Signals.SOURCE));
        });
    line.each(
        EXIT,
        p -> {
          long n = Long.parseLong(p.get("code"));
          line.add(
              p,
              Kind.EXIT_CODE,
              n == 0 ? "exit code 0: it ended well" : "exit code " + n + shellMeaning(n),
              SHELL);
        });
    line.each(
        WORD,
        p ->
            RESULT
                .name(p.get("code"))
                .ifPresent(r -> line.add(p, Kind.UNIT_RESULT, r.text(), RESULTS)));
  }

  @Override
  public void alone(Number number, Findings code) {
    String text = number.text();
    int slash = text.indexOf('/');
    if (slash > 0 && text.substring(0, slash).matches("\\d{1,3}")) {
      EXITS
          .number(Long.parseLong(text.substring(0, slash)))
          .filter(r -> r.name().equalsIgnoreCase(text.substring(slash + 1)))
          .ifPresent(r -> code.whole(Kind.EXIT_CODE, service(r), SOURCE));
    }
    if (number.decimal() && number.value() >= 0 && number.value() <= 255) {
      long n = number.value();
      EXITS.number(n).ifPresent(r -> code.whole(Kind.EXIT_CODE, service(r), SOURCE));
      String shell = shellMeaning(n);
      if (!shell.isEmpty()) {
        code.whole(Kind.EXIT_CODE, "exit code " + n + shell, SHELL);
      }
    }
    RESULT.name(text).ifPresent(r -> code.whole(Kind.UNIT_RESULT, r.text(), RESULTS));
    if (text.matches("[A-Z_]{4,30}")) {
      EXITS
          .name(text.toUpperCase(Locale.ROOT))
          .ifPresent(r -> code.whole(Kind.EXIT_CODE, service(r), SOURCE));
    }
    inLine(code);
  }

  private static String service(Table.Row row) {
    return "exit code " + row.number() + ", " + row.name() + ": " + row.text();
  }

  /** What a shell, or the loader of shared libraries, means by an exit code; may be empty. */
  static String shellMeaning(long exit) {
    if (exit == 126) {
      return ": the program was found but can't be run";
    }
    if (exit == 127) {
      return ": the program, or a library that it needs, was not found";
    }
    return exit > 128 && exit <= 128 + 31
        ? ": in a shell, killed by signal " + (exit - 128) + Signals.named(exit - 128)
        : "";
  }
}
