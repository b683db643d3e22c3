package standstill.decode;

import java.util.Locale;
import java.util.Optional;
import standstill.text.Pattern;

/** The status with which a process ended, as the kernel prints it when the first one did. */
final class WaitStatus implements Codes {
  private static final String SOURCE =
      "Linux kernel/exit.c (\"Attempted to kill init!\"); POSIX wait(), wait(2)";
  private static final Pattern EXITCODE = Pattern.known("\\bexitcode=(?P<code>0x[0-9a-f]{1,8})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        EXITCODE,
        p ->
            meaning(Bits.hex(p.get("code").substring(2)))
                .ifPresent(m -> line.add(p, Kind.WAIT_STATUS, m, SOURCE)));
  }

  @Override
  public void alone(Number number, Findings code) {
    boolean looks = number.text().toLowerCase(Locale.ROOT).startsWith("0x");
    if (looks && number.digits().length() >= 2 && number.digits().length() <= 8) {
      meaning(number.value()).ifPresent(m -> code.whole(Kind.WAIT_STATUS, m, SOURCE));
    }
    inLine(code);
  }

  /** Low 7 bits: the signal; bit 7: a memory dump was made; bits 8 to 15: the exit code. */
  private static Optional<String> meaning(long status) {
    int signal = (int) (status & 0x7f);
    long exit = status >>> 8 & 0xff;
    boolean core = (status & 0x80) != 0;
    if (status > 0xffff || (signal != 0 && exit != 0) || (signal == 0 && core) || signal > 64) {
      return Optional.empty();
    }
    return Optional.of(
        signal == 0
            ? "ended with exit code " + exit + UnitExits.shellMeaning(exit)
            : "killed by signal "
                + signal
                + Signals.named(signal)
                + (core ? ", with a memory dump" : ""));
  }
}
