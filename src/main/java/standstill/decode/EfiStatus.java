package standstill.decode;

import java.util.Optional;
import java.util.stream.Collectors;
import standstill.text.Pattern;

/** Status codes of UEFI firmware, as numbers of 64 or 32 bits, as names, and in edk2's words. */
final class EfiStatus implements Codes {
  private static final String SOURCE = "UEFI 2.10 appendix D; edk2 MdePkg/Include/Base.h";
  private static final String WORDS_SOURCE =
      "edk2 MdePkg/Library/BasePrintLib/PrintLibInternal.c; UEFI 2.10 appendix D";
  private static final Table ERRORS = Table.named("efi-status");
  private static final Table WARNINGS = Table.named("efi-warning");
  private static final Table WORDS = Table.named("efi-words");

  private static final Pattern WIDE = Pattern.known("\\b0x(?P<n>[89aAcC]0{12}[0-9a-fA-F]{3})\\b");
  private static final Pattern BARE_WIDE =
      Pattern.known("\\b(?P<n>[89aAcC]0{13}[0-9a-fA-F]{2})\\b");
  private static final Pattern NARROW = Pattern.known("\\b0x(?P<n>[89aAcC]0{5}[0-9a-fA-F]{2})\\b");
  private static final Pattern FIRMWARE =
      Pattern.known("(?i)\\b(?:efi|status|image|shim|bds|boot\\w*|load\\w*)\\b");
  private static final Pattern SIGNED = Pattern.known("-922337203685477\\d{4}\\b");
  private static final Pattern NAME = Pattern.known("\\bEFI_[A-Z_]{4,30}\\b");
  private static final Pattern SAID =
      Pattern.known(
          "(?i)(?:BdsDxe: failed to|failed to (?:load|start) (?:boot|image)|error (?:loading|opening|executing|reading)"
              + "|\\bstatus(?: code)?\\b|failed to (?:load|start|execute|open)\\b).*?(?: - |[:=(]) ?(?P<code>"
              + WORDS.rows().stream().map(Table.Row::name).collect(Collectors.joining("|"))
              + ")\\)?\\.?$");

  @Override
  public void inLine(Findings line) {
    line.each(WIDE, p -> number(line, p, Bits.hex(p.get("n")), 64));
    line.each(BARE_WIDE, p -> number(line, p, Bits.hex(p.get("n")), 64));
    if (FIRMWARE.foundIn(line.text())) {
      line.each(NARROW, p -> number(line, p, Bits.hex(p.get("n")), 32));
    }
    line.each(
        SIGNED,
        p -> {
          Number n = Number.of(line.text().substring(p.start(), p.end()));
          if (n.known()) {
            number(line, p, n.value(), 64);
          }
        });
    line.each(
        NAME,
        p -> {
          String name = line.text().substring(p.start(), p.end());
          ERRORS
              .name(name)
              .or(() -> WARNINGS.name(name))
              .ifPresent(r -> line.add(p, Kind.EFI_STATUS, r.text(), SOURCE));
        });
    line.each(
        SAID,
        p ->
            WORDS
                .name(p.get("code"))
                .flatMap(w -> ERRORS.number(w.number()))
                .ifPresent(
                    r ->
                        line.add(
                            p,
                            Kind.EFI_STATUS,
                            r.name() + " (" + r.number() + "): " + r.text(),
                            WORDS_SOURCE)));
  }

  @Override
  public void alone(Number number, Findings code) {
    String text = number.text();
    ERRORS
        .name(text)
        .ifPresent(
            r -> code.whole(Kind.EFI_STATUS, "error " + r.number() + ": " + r.text(), SOURCE));
    WARNINGS
        .name(text)
        .ifPresent(
            r -> code.whole(Kind.EFI_STATUS, "warning " + r.number() + ": " + r.text(), SOURCE));
    WORDS
        .name(text)
        .flatMap(w -> ERRORS.number(w.number()))
        .ifPresent(
            r ->
                code.whole(
                    Kind.EFI_STATUS,
                    r.name() + " (" + r.number() + "): " + r.text(),
                    WORDS_SOURCE));
    if (!number.known()) {
      return;
    }
    long v = number.value();
    if (number.hex()) {
      boolean narrow = number.digits().length() <= 8;
      if (narrow && v >= 0x20000000L) {
        meaning(v, 32).ifPresent(m -> code.whole(Kind.EFI_STATUS, m, SOURCE));
      } else {
        meaning(v, 64).ifPresent(m -> code.whole(Kind.EFI_STATUS, m, SOURCE));
      }
    } else if (v < Integer.MIN_VALUE) {
      // Signed, or unsigned and too large for a signed number.
      meaning(v, 64).ifPresent(m -> code.whole(Kind.EFI_STATUS, m, SOURCE));
    }
  }

  private static void number(Findings line, Findings.Place place, long value, int bits) {
    meaning(value, bits).ifPresent(m -> line.add(place, Kind.EFI_STATUS, m, SOURCE));
  }

  /** The reading of a status word of 64 or 32 bits; the three top bits say whose code it is. */
  private static Optional<String> meaning(long value, int bits) {
    long top = value >>> (bits - 3) & 7;
    long code = value & (1L << (bits - 3)) - 1;
    if (code > 0xffff) {
      return Optional.empty();
    }
    boolean error = (top & 4) != 0;
    String sort = error ? "error" : "warning";
    if ((top & 2) != 0) {
      return Optional.of(sort + " " + code + " in the range of the firmware's maker (OEM)");
    }
    if ((top & 1) != 0) {
      return Optional.of(
          sort + " " + code + " in the range of the platform initialisation (PI) specification");
    }
    if (error) {
      return Optional.of(
          ERRORS
              .number(code)
              .map(r -> "error, " + r.name() + " (" + code + "): " + r.text())
              .orElse("error " + code + ", which the specification does not assign"));
    }
    if (code == 0) {
      return Optional.of("EFI_SUCCESS: no error");
    }
    return WARNINGS.number(code).map(r -> "warning, " + r.name() + " (" + code + "): " + r.text());
  }
}
