package standstill.decode;

import java.util.Optional;
import standstill.text.Pattern;

/**
 * Processor exceptions. Linux, Darwin and edk2 print the processor's vectors; FreeBSD prints
 * numbers of its own, so that its trap 12 is a page fault, not a stack-segment fault.
 */
final class Exceptions implements Codes {
  private static final String SOURCE =
      "Linux arch/x86/include/asm/trapnr.h; x86 manual vol. 3A table 6-1";
  private static final String FREEBSD = "FreeBSD sys/x86/include/trap.h";
  private static final String DARWIN = "Darwin osfmk/i386/trap.h";
  private static final String EDK2 =
      "edk2 UefiCpuPkg, exception handler; x86 manual vol. 3A table 6-1";
  private static final Table VECTORS = Table.named("exception");
  private static final Table TRAPS = Table.named("freebsd-trap");

  private static final Pattern MNEMONIC =
      Pattern.known(
          "(?P<code>#(?:DE|DB|NMI|BP|OF|BR|UD|NM|DF|TS|NP|SS|GP|PF|MF|AC|MC|XF|VE|CP|VC))\\b");
  private static final Pattern EARLY = Pattern.known("early exception (?P<code>0x[0-9a-f]{2})\\b");
  private static final Pattern FATAL = Pattern.known("Fatal trap (?P<code>\\d{1,2}):");
  private static final Pattern TRAP_NUMBER =
      Pattern.known("^trap number\\s*= (?P<code>\\d{1,2})\\b");
  private static final Pattern KERNEL_TRAP =
      Pattern.known("Kernel trap at 0x[0-9a-f]+, type (?:= )?(?P<code>\\d{1,2})=");
  private static final Pattern FIRMWARE =
      Pattern.known("Exception Type - (?P<code>[0-9A-Fa-f]{2})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(FATAL, p -> freeBsd(line, p));
    line.each(TRAP_NUMBER, p -> freeBsd(line, p));
    line.each(
        KERNEL_TRAP,
        p ->
            vector(Long.parseLong(p.get("code")))
                .ifPresent(m -> line.add(p, Kind.EXCEPTION, m, DARWIN)));
    line.each(
        FIRMWARE,
        p ->
            vector(Bits.hex(p.get("code")))
                .ifPresent(m -> line.add(p, Kind.EXCEPTION, m + ", met in the firmware", EDK2)));
    line.each(
        EARLY,
        p ->
            vector(Bits.hex(p.get("code").substring(2)))
                .ifPresent(m -> line.add(p, Kind.EXCEPTION, m + ", early in the kernel", SOURCE)));
    line.each(MNEMONIC, p -> mnemonic(line, p));
  }

  @Override
  public void alone(Number number, Findings code) {
    code.each(MNEMONIC, p -> mnemonic(code, p));
    if (number.known() && number.digits().length() <= 2 && number.value() >= 0) {
      vector(number.value())
          .ifPresent(m -> code.whole(Kind.EXCEPTION, m + " (Linux, Darwin, firmware)", SOURCE));
      if (number.decimal()) {
        trap(number.value()).ifPresent(m -> code.whole(Kind.EXCEPTION, m, FREEBSD));
      }
    }
  }

  private static void mnemonic(Findings line, Findings.Place place) {
    VECTORS
        .name(place.get("code").substring(1))
        .flatMap(r -> vector(r.number()))
        .ifPresent(m -> line.add(place, Kind.EXCEPTION, m, SOURCE));
  }

  private static void freeBsd(Findings line, Findings.Place place) {
    trap(Long.parseLong(place.get("code")))
        .ifPresent(m -> line.add(place, Kind.EXCEPTION, m, FREEBSD));
  }

  private static Optional<String> vector(long number) {
    return VECTORS
        .number(number)
        .map(r -> r.text() + " (#" + r.name() + ", vector " + number + ")");
  }

  private static Optional<String> trap(long number) {
    return TRAPS
        .number(number)
        .map(
            r ->
                "FreeBSD trap "
                    + number
                    + ": "
                    + r.text()
                    + VECTORS
                        .name(r.name())
                        .map(v -> " (#" + v.name() + ", vector " + v.number() + ")")
                        .orElse(""));
  }
}
