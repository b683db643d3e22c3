package standstill.decode;

import java.util.Locale;
import standstill.text.Pattern;

/** Names of the boot files on removable media, and counters of tries in boot entries. */
final class BootFiles implements Codes {
  private static final String SOURCE = "UEFI 2.10 section 3.5.1.1, table of image types";
  private static final String COUNTING =
      "systemd docs/AUTOMATIC_BOOT_ASSESSMENT.md; Boot Loader Specification (UAPI group)";
  private static final Table FILES = Table.named("boot-file");
  private static final Pattern FILE =
      Pattern.known("(?i)\\bBOOT(?:IA32|X64|IA64|ARM|AA64|RISCV\\d+|LOONGARCH\\d+)\\.EFI\\b");
  private static final Pattern COUNTED =
      Pattern.known("\\w\\+(?P<left>\\d{1,3})(?:-(?P<done>\\d{1,3}))?\\.(?:conf|efi)\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        FILE,
        p ->
            FILES
                .name(line.text().substring(p.start(), p.end()))
                .ifPresent(
                    r ->
                        line.add(
                            p,
                            Kind.BOOT_FILE,
                            String.format(
                                Locale.ROOT,
                                "the file that firmware starts from a removable medium on %s (PE machine 0x%04x)",
                                r.text(),
                                r.number()),
                            SOURCE)));
    line.each(
        COUNTED,
        p -> {
          int left = Integer.parseInt(p.get("left"));
          String tried = p.has("done") ? ", " + Integer.parseInt(p.get("done")) + " used" : "";
          line.add(
              p,
              Kind.BOOT_FILE,
              left == 0
                  ? "boot entry out of tries" + tried + ": it counts as bad"
                  : "boot entry with " + left + " tries left" + tried,
              COUNTING);
        });
  }

  @Override
  public void alone(Number number, Findings code) {
    inLine(code);
    if (number.hex() && number.digits().length() == 4) {
      FILES
          .number(number.value())
          .ifPresent(
              r -> code.whole(Kind.BOOT_FILE, "PE machine of " + r.text() + " programs", SOURCE));
    }
  }
}
