package standstill.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import standstill.text.Pattern;

/**
 * The status register of a machine check bank, and the global one.
 *
 * <p>The architecture's part only: the code in bits 15 to 0 and the flags on top. The model code in
 * bits 31 to 16 differs from processor to processor and is shown, not explained.
 */
final class MachineChecks implements Codes {
  private static final String SOURCE =
      "x86 manual vol. 3B, chapter Machine-Check Architecture, IA32_MCi_STATUS; Linux arch/x86/include/asm/mce.h";
  private static final Pattern GLOBAL =
      Pattern.known("Machine Check(?: Exception)?: (?P<code>[0-9a-f]{1,16})\\b");
  private static final Pattern BANK =
      Pattern.known("Machine Check.{0,60} Bank \\d{1,3}: (?P<code>[0-9a-f]{14,16})\\b");
  private static final Pattern STATUS =
      Pattern.known("\\b(?:STATUS|MC\\d+_STATUS\\S*?:?) ?(?P<code>(?:0x)?[89a-f][0-9a-f]{15})\\b");
  private static final List<String> REQUESTS =
      List.of(
          "generic",
          "read",
          "write",
          "data read",
          "data write",
          "instruction fetch",
          "prefetch",
          "eviction",
          "snoop");
  private static final List<String> THINGS = List.of("instruction", "data", "generic");

  @Override
  public void inLine(Findings line) {
    line.each(
        GLOBAL, p -> line.add(p, Kind.MACHINE_CHECK, global(Bits.hex(p.get("code"))), SOURCE));
    line.each(BANK, p -> line.add(p, Kind.MACHINE_CHECK, bank(Bits.hex(p.get("code"))), SOURCE));
    line.each(
        STATUS,
        p ->
            line.add(
                p,
                Kind.MACHINE_CHECK,
                bank(Bits.hex(p.get("code").replaceFirst("^0?x", ""))),
                SOURCE));
  }

  @Override
  public void alone(Number number, Findings code) {
    if (!number.known() || number.text().startsWith("-")) {
      return;
    }
    if (number.digits().length() == 16 && Bits.set(number.asHex(), 63)) {
      code.whole(Kind.MACHINE_CHECK, bank(number.asHex()), SOURCE);
    } else if (number.text().startsWith("0x") && number.digits().length() == 4) {
      String what = mcaCode((int) number.value());
      if (!what.isEmpty() && number.value() > 0) {
        code.whole(Kind.MACHINE_CHECK, "machine check code: " + what, SOURCE);
      }
    }
  }

  /** What the global status says. */
  static String global(long status) {
    List<String> flags =
        Bits.names(
            status,
            0,
            "RIPV (can be continued)",
            1,
            "EIPV (the address belongs to the error)",
            2,
            "MCIP (a machine check was in progress)",
            3,
            "LMCES (for this processor only)");
    return flags.isEmpty()
        ? "global status: no flag set"
        : "global status: " + String.join(", ", flags);
  }

  /** What a bank's status says. */
  static String bank(long status) {
    List<String> flags =
        new ArrayList<>(
            Bits.names(
                status, 63, "VAL", 62, "OVER", 61, "UC", 60, "EN", 59, "MISCV", 58, "ADDRV", 57,
                "PCC"));
    boolean uncorrected = Bits.set(status, 61);
    boolean corrupt = Bits.set(status, 57);
    boolean signalled = Bits.set(status, 56);
    boolean action = Bits.set(status, 55);
    if (uncorrected && !corrupt) {
      flags.addAll(Bits.names(status, 56, "S", 55, "AR"));
    }
    String severity;
    if (!Bits.set(status, 63)) {
      severity = "not valid";
    } else if (!uncorrected) {
      long count = status >>> 38 & 0x7fff;
      severity = "corrected" + (count > 0 ? ", count " + count : "");
    } else if (corrupt) {
      severity = "fatal: not corrected, and the processor's state is damaged";
    } else if (!signalled) {
      severity = "not corrected, no action needed (UCNA)";
    } else {
      severity =
          action
              ? "not corrected, action required (SRAR)"
              : "not corrected, action optional (SRAO)";
    }
    int code = (int) (status & 0xffff);
    String what = mcaCode(code);
    return String.format(
        Locale.ROOT,
        "%s; %s (code 0x%04x, model code 0x%04x); flags %s",
        severity,
        what.isEmpty() ? "an error that the architecture does not define" : what,
        code,
        status >>> 16 & 0xffff,
        String.join(" ", flags));
  }

  /** The architecture's error code; bit 12 only says that reports were filtered. */
  private static String mcaCode(int raw) {
    int code = raw & ~0x1000;
    switch (code) {
      case 0:
        return "no error";
      case 1:
        return "unclassified error";
      case 2:
        return "parity error in the microcode ROM";
      case 3:
        return "external error, reported by another processor";
      case 4:
        return "redundancy check error (FRC)";
      case 5:
        return "internal parity error";
      case 6:
        return "violation by the system management handler";
      case 0x400:
        return "internal timer error";
      default:
        break;
    }
    String level = List.of("L0", "L1", "L2", "generic level").get(code & 3);
    int thing = code >> 2 & 3;
    int request = code >> 4 & 15;
    boolean sound = thing < 3;
    if (code >> 2 == 3) {
      return "generic cache hierarchy error, " + level;
    }
    if (code >> 4 == 1 && sound) {
      return THINGS.get(thing) + " TLB error, " + level;
    }
    if (code >> 7 == 1 && (code >> 4 & 7) <= 4) {
      String channel = (code & 15) == 15 ? "channel not specified" : "channel " + (code & 15);
      return "memory controller error, "
          + List.of("generic", "read", "write", "address or command", "scrub").get(code >> 4 & 7)
          + ", "
          + channel;
    }
    if (code >> 8 == 1 && sound && request < REQUESTS.size()) {
      return "cache error, " + THINGS.get(thing) + ", " + REQUESTS.get(request) + ", " + level;
    }
    if (code >> 11 == 1 && request < REQUESTS.size()) {
      return "bus or interconnect error, "
          + REQUESTS.get(request)
          + ", "
          + List.of(
                  "this processor asked",
                  "this processor answered",
                  "this processor watched",
                  "generic")
              .get(code >> 9 & 3)
          + ", "
          + List.of("memory", "reserved", "I/O", "other").get(thing)
          + (Bits.set(code, 8) ? ", timed out" : "")
          + ", "
          + level;
    }
    return "";
  }
}
