package standstill.decode;

import java.util.ArrayList;
import java.util.List;
import standstill.text.Pattern;

/** The error code of an x86 page fault, as an oops, a kernel line or a crashed program shows it. */
final class PageFaults implements Codes {
  private static final String SOURCE =
      "Linux arch/x86/include/asm/trap_pf.h, arch/x86/mm/fault.c; x86 manual vol. 3A section 4.7";
  private static final Pattern OOPS =
      Pattern.known("\\bOops: (?P<code>[0-9a-f]{4}) \\[#(?P<n>\\d+)\\]");
  private static final Pattern PF = Pattern.known("error_code\\((?P<code>0x[0-9a-f]{1,8})\\)");
  private static final Pattern SEGFAULT =
      Pattern.known(
          "segfault at [0-9a-f]+ ip [0-9a-f]+ sp [0-9a-f]+ error (?P<code>[0-9a-f]{1,4})\\b");
  private static final Pattern DARWIN =
      Pattern.known("Fault CR2: 0x[0-9a-f]+, Error code: (?P<code>0x[0-9a-f]{1,16})");

  @Override
  public void inLine(Findings line) {
    line.each(
        OOPS,
        p -> {
          long bits = Bits.hex(p.get("code"));
          String which =
              p.get("n").equals("1") ? "; the first oops" : "; oops number " + p.get("n");
          line.add(p, Kind.PAGE_FAULT, "page fault: " + meaning(bits) + which, SOURCE);
        });
    line.each(
        PF,
        p -> line.add(p, Kind.PAGE_FAULT, meaning(Bits.hex(p.get("code").substring(2))), SOURCE));
    line.each(
        SEGFAULT, p -> line.add(p, Kind.PAGE_FAULT, meaning(Bits.hex(p.get("code"))), SOURCE));
    line.each(
        DARWIN,
        p -> line.add(p, Kind.PAGE_FAULT, meaning(Bits.hex(p.get("code").substring(2))), SOURCE));
  }

  @Override
  public void alone(Number number, Findings code) {
    boolean padded = number.digits().length() == 4;
    if (padded && (number.asHex() & ~0x807fL) == 0) {
      code.whole(Kind.PAGE_FAULT, "page fault: " + meaning(number.asHex()), SOURCE);
    }
  }

  private static String meaning(long bits) {
    String access =
        Bits.set(bits, 4)
            ? "instruction fetch"
            : Bits.set(bits, 1) ? "write access" : "read access";
    String why =
        !Bits.set(bits, 0)
            ? "not-present page"
            : Bits.set(bits, 3)
                ? "reserved bit violation"
                : Bits.set(bits, 5) ? "protection keys violation" : "permissions violation";
    List<String> more = new ArrayList<>(Bits.names(bits, 6, "shadow stack", 15, "enclave (SGX)"));
    return (Bits.set(bits, 2) ? "user " : "supervisor ")
        + access
        + ", "
        + why
        + (more.isEmpty() ? "" : ", " + String.join(", ", more));
  }
}
