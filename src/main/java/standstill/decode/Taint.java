package standstill.decode;

import java.util.ArrayList;
import java.util.List;
import standstill.text.Pattern;

/** The marks that a kernel puts on itself when something makes its reports less sure. */
final class Taint implements Codes {
  private static final String SOURCE =
      "Linux Documentation/admin-guide/tainted-kernels.rst; kernel/panic.c";
  private static final Table FLAGS = Table.named("taint");
  private static final Pattern LETTERS =
      Pattern.known("Tainted: (?P<code>[GP](?: {0,18}[FSRMBUDAWCIOELKXTN]){0,18})(?: |$)");
  private static final Pattern CLEAN = Pattern.known("Not tainted");
  private static final Pattern NUMBER =
      Pattern.known("\\b(?:kernel\\.)?tainted ?[=:]? ?(?P<code>\\d{1,7})\\b");
  private static final Pattern ALONE =
      Pattern.known("^(?P<code>[GP](?: *[FSRMBUDAWCIOELKXTN]){0,18})$");

  @Override
  public void inLine(Findings line) {
    line.each(LETTERS, p -> line.add(p, Kind.TAINT, letters(p.get("code")), SOURCE));
    line.each(CLEAN, p -> line.add(p, Kind.TAINT, "no taint flag is set (0)", SOURCE));
    line.each(NUMBER, p -> line.add(p, Kind.TAINT, number(Long.parseLong(p.get("code"))), SOURCE));
  }

  @Override
  public void alone(Number number, Findings code) {
    code.each(ALONE, p -> code.add(p, Kind.TAINT, letters(p.get("code")), SOURCE));
    code.each(LETTERS, p -> code.add(p, Kind.TAINT, letters(p.get("code")), SOURCE));
    code.each(CLEAN, p -> code.add(p, Kind.TAINT, "no taint flag is set (0)", SOURCE));
    if (number.decimal() && number.value() > 0 && number.value() < 1L << FLAGS.rows().size()) {
      code.whole(Kind.TAINT, number(number.value()), SOURCE);
    }
  }

  private static String letters(String text) {
    long value = 0;
    for (Table.Row row : FLAGS.rows()) {
      if (text.contains(row.name())) {
        value |= 1L << row.number();
      }
    }
    return number(value);
  }

  private static String number(long value) {
    if (value == 0) {
      return "no taint flag is set (0); G says that all modules have an open licence";
    }
    List<String> said = new ArrayList<>();
    for (Table.Row row : FLAGS.rows()) {
      if (Bits.set(value, (int) row.number())) {
        said.add(row.name() + " " + row.text());
      }
    }
    return "taint " + value + ", printed `" + print(value) + "`: " + String.join("; ", said);
  }

  /** As the kernel prints it: one column for each bit, a blank (for bit 0 a G) when it is clear. */
  private static String print(long value) {
    StringBuilder text = new StringBuilder();
    for (Table.Row row : FLAGS.rows()) {
      String clear = row.number() == 0 ? "G" : " ";
      text.append(Bits.set(value, (int) row.number()) ? row.name() : clear);
    }
    return text.toString().stripTrailing();
  }
}
