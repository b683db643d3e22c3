package standstill.decode;

import java.util.Locale;
import java.util.Optional;
import standstill.text.Pattern;

/** Results of the ACPI interpreter and signatures of the firmware's tables. */
final class Acpi implements Codes {
  private static final String SOURCE = "Linux include/acpi/acexcep.h (ACPICA)";
  private static final String TABLE_SOURCE = "ACPI 6.5 section 5.2; Linux include/acpi/actbl.h";
  private static final Table STATUS = Table.named("acpi-status");
  private static final Table TABLES = Table.named("acpi-table");
  private static final Pattern NAME = Pattern.known("\\bAE_[A-Z_]{2,40}\\b");
  private static final Pattern LISTED =
      Pattern.known("ACPI: (?P<code>[A-Z0-9]{4}) 0x[0-9A-Fa-f]{8,16} ");
  private static final Pattern NAMED =
      Pattern.known(
          "ACPI.{0,120}(?:\\[(?P<code>[A-Z0-9]{4})\\]|[Tt]able (?P<bare>[A-Z0-9]{4})\\b)");

  @Override
  public void inLine(Findings line) {
    line.each(NAME, p -> status(line, p, line.text().substring(p.start(), p.end())));
    line.each(
        LISTED,
        p -> table(p.get("code")).ifPresent(m -> line.add(p, Kind.ACPI_TABLE, m, TABLE_SOURCE)));
    line.each(
        NAMED,
        p -> {
          if (p.has("code")) {
            table(p.get("code")).ifPresent(m -> line.add(p, Kind.ACPI_TABLE, m, TABLE_SOURCE));
          } else {
            String name = p.get("bare");
            int start = p.end() - name.length();
            table(name).ifPresent(m -> line.add(start, p.end(), Kind.ACPI_TABLE, m, TABLE_SOURCE));
          }
        });
  }

  private static void status(Findings line, Findings.Place place, String name) {
    STATUS.name(name).ifPresent(r -> line.add(place, Kind.ACPI_STATUS, meaning(r), SOURCE));
  }

  @Override
  public void alone(Number number, Findings code) {
    code.each(NAME, p -> status(code, p, code.text().substring(p.start(), p.end())));
    if (number.text().startsWith("0x") && number.digits().length() == 4) {
      STATUS
          .number(number.value())
          .ifPresent(r -> code.whole(Kind.ACPI_STATUS, r.name() + ": " + meaning(r), SOURCE));
    }
    table(number.text()).ifPresent(m -> code.whole(Kind.ACPI_TABLE, m, TABLE_SOURCE));
  }

  private static String meaning(Table.Row row) {
    String sort =
        switch ((int) (row.number() >>> 12)) {
          case 0 -> "environment";
          case 1 -> "caller of the interpreter";
          case 2 -> "ACPI table";
          case 3 -> "firmware program (AML)";
          default -> "control, not a failure";
        };
    return String.format(Locale.ROOT, "%s (0x%04x, %s)", row.text(), row.number(), sort);
  }

  private static Optional<String> table(String signature) {
    return TABLES
        .name(signature)
        .filter(r -> r.name().equals(signature))
        .map(r -> "ACPI table " + r.name() + ": " + r.text());
  }
}
