package standstill.decode;

import java.util.Optional;
import standstill.text.Pattern;

/** Signals by number and name (the numbers of Linux on x86 and ARM). */
final class Signals implements Codes {
  static final String SOURCE = "Linux include/uapi/asm-generic/signal.h; signal(7)";
  private static final Table SIGNALS = Table.named("signal");
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
