package standstill.decode;

import java.util.List;
import java.util.Optional;
import standstill.text.Pattern;

/**
 * Signals by number and name: the numbers of Linux on x86 and ARM, but for the two lines with which
 * FreeBSD and Darwin tell of a killed process, which count as those systems do.
 */
final class Signals implements Codes {
  static final String SOURCE = "Linux include/uapi/asm-generic/signal.h; signal(7)";
  private static final Table SIGNALS = Table.named("signal");
  private static final String BSD = "FreeBSD sys/sys/signal.h; Darwin bsd/sys/signal.h";

  /** Names by number from 0 where the BSD family differs from Linux or agrees with it, up to 15. */
  private static final List<String> BSD_NAMES =
      List.of(
          "", "SIGHUP", "SIGINT", "SIGQUIT", "SIGILL", "SIGTRAP", "SIGABRT", "SIGEMT", "SIGFPE",
          "SIGKILL", "SIGBUS", "SIGSEGV", "SIGSYS", "SIGPIPE", "SIGALRM", "SIGTERM");

  private static final Pattern BSD_LINE =
      Pattern.known("(?:exited on signal|initproc .{0,160}\\(signal) (?P<code>\\d{1,2})\\b");
  private static final Pattern NAME = Pattern.known("\\bSIG[A-Z]{2,6}[12]?\\b");
  private static final Pattern NUMBER =
      Pattern.known("\\b(?:signal|Signal|SIGNAL|sig) (?P<code>\\d{1,2})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        NAME,
        p ->
            name(line.text().substring(p.start(), p.end()))
                .ifPresent(
                    r ->
                        line.add(
                            p, Kind.SIGNAL, "signal " + r.number() + ": " + r.text(), SOURCE)));
    boolean[] bsd = {false};
    line.each(
        BSD_LINE,
        p -> {
          bsd[0] = true;
          int number = Integer.parseInt(p.get("code"));
          if (number > 0 && number < BSD_NAMES.size()) {
            String name = BSD_NAMES.get(number);
            String text = name(name).map(r -> ": " + r.text()).orElse("");
            line.add(p, Kind.SIGNAL, name + text, BSD);
          }
        });
    if (bsd[0]) {
      return;
    }
    line.each(
        NUMBER,
        p ->
            number(Long.parseLong(p.get("code")))
                .ifPresent(r -> line.add(p, Kind.SIGNAL, r.name() + ": " + r.text(), SOURCE)));
  }

  @Override
  public void alone(Number number, Findings code) {
    if (number.decimal() && number.value() > 0) {
      number(number.value())
          .ifPresent(r -> code.whole(Kind.SIGNAL, r.name() + ": " + r.text(), SOURCE));
    }
    inLine(code);
  }

  static Optional<Table.Row> number(long number) {
    return SIGNALS.number(number);
  }

  static Optional<Table.Row> name(String name) {
    return SIGNALS.name(name);
  }

  /** Its name and meaning to be put after its number; empty for a number without a name. */
  static String named(long number) {
    return number(number).map(r -> ", " + r.name() + " (" + r.text() + ")").orElse("");
  }
}
