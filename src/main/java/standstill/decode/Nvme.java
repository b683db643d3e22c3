package standstill.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import standstill.text.Pattern;

/** Status of NVMe commands, as the kernel stores it or in two parts, and of the controller. */
final class Nvme implements Codes {
  private static final String SOURCE =
      "NVM Express Base Specification, status field; Linux include/linux/nvme.h";
  private static final String CONTROLLER =
      "NVM Express Base Specification, controller status (CSTS); Linux include/linux/nvme.h";
  private static final Table STATUS = Table.named("nvme-status");
  private static final Pattern PARTS =
      Pattern.known("(?P<code>sct 0x(?P<sct>[0-9a-f]) / sc 0x(?P<sc>[0-9a-f]{1,2}))");
  private static final Pattern NUMBER =
      Pattern.known(
          "\\bnvme.{0,120}\\b(?:status:?|failed|error:?) \\(?(?P<code>0x[0-9a-f]{1,4}|\\d{1,5})\\)?(?:[ ,.;]|$)");
  private static final Pattern CSTS = Pattern.known("\\bCSTS=(?P<code>0x[0-9a-f]{1,8})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        PARTS,
        p ->
            line.add(
                p,
                Kind.NVME_STATUS,
                said(Bits.hex(p.get("sct")) << 8 | Bits.hex(p.get("sc"))),
                SOURCE));
    line.each(CSTS, p -> line.add(p, Kind.NVME_CONTROLLER, controller(p.get("code")), CONTROLLER));
    line.each(
        NUMBER,
        p -> {
          String code = p.get("code");
          long value = code.startsWith("0x") ? Bits.hex(code.substring(2)) : Long.parseLong(code);
          if (value <= 0x7fff) {
            known(value).ifPresent(m -> line.add(p, Kind.NVME_STATUS, m, SOURCE));
          }
        });
  }

  @Override
  public void alone(Number number, Findings code) {
    boolean hex = number.text().startsWith("0x");
    if (hex && number.digits().length() <= 4 && number.value() > 0 && number.value() <= 0x7fff) {
      known(number.value()).ifPresent(m -> code.whole(Kind.NVME_STATUS, m, SOURCE));
    }
    if (hex && number.value() == 0xffffffffL) {
      code.whole(Kind.NVME_CONTROLLER, controller(number.text()), CONTROLLER);
    }
    inLine(code);
  }

  private static Optional<String> known(long value) {
    return STATUS.number(value & 0x7ff).isPresent() ? Optional.of(said(value)) : Optional.empty();
  }

  /** Code in bits 7 to 0, type in bits 10 to 8; 13 and 14 say "more" and "do not retry". */
  private static String said(long value) {
    long type = value >>> 8 & 7;
    List<String> flags = new ArrayList<>(Bits.names(value, 13, "MORE: details in the log"));
    flags.add(Bits.set(value, 14) ? "DNR: retrying won't help" : "may be retried");
    String sort =
        switch ((int) type) {
          case 0 -> "generic";
          case 1 -> "command specific";
          case 2 -> "media and data integrity";
          case 3 -> "path";
          case 7 -> "vendor specific";
          default -> "reserved";
        };
    String name =
        STATUS
            .number(value & 0x7ff)
            .map(Table.Row::text)
            .orElse("a code that the specification or the vendor defines");
    return String.format(
        Locale.ROOT,
        "%s (type %d %s, code 0x%02x)%s",
        name,
        type,
        sort,
        value & 0xff,
        (value & 0x7ff) == 0 ? "" : "; " + String.join("; ", flags));
  }

  private static String controller(String code) {
    long value = Bits.hex(code.substring(2));
    if (value == 0xffffffffL) {
      return "all bits set: the device is gone from the bus, or has no power";
    }
    List<String> said =
        new ArrayList<>(
            Bits.names(
                value,
                0,
                "ready",
                1,
                "fatal status (the controller failed)",
                4,
                "a subsystem reset occurred",
                5,
                "processing paused"));
    long shutdown = value >>> 2 & 3;
    if (shutdown == 1) {
      said.add("shutting down");
    } else if (shutdown == 2) {
      said.add("shut down");
    }
    return said.isEmpty() ? "not ready" : String.join(", ", said);
  }
}
