package standstill.decode;

/** One sort of code: where it stands in a line, and what it means when it stands alone. */
interface Codes {
  /** Finds codes of this sort in a line. */
  void inLine(Findings line);

  /** Reads a text that is nothing but one code. */
  void alone(Number number, Findings code);

  /**
   * A code alone, as a number.
   *
   * @param text the code
   * @param digits its digits without sign and {@code 0x}; empty when it is no number
   * @param hex whether it was written with {@code 0x} or has letters among its digits
   * @param value the number, as 64 unsigned bits when it is hexadecimal
   * @param known whether {@code value} means anything
   */
  record Number(String text, String digits, boolean hex, long value, boolean known) {
    static Number of(String text) {
      try {
        if (text.matches("-?\\d{1,20}")) {
          long value = text.startsWith("-") ? Long.parseLong(text) : Long.parseUnsignedLong(text);
          return new Number(text, text.replace("-", ""), false, value, true);
        }
        if (text.matches("0[xX][0-9a-fA-F]{1,16}")) {
          String digits = text.substring(2);
          return new Number(text, digits, true, Long.parseUnsignedLong(digits, 16), true);
        }
        if (text.matches("[0-9a-fA-F]{1,16}")) {
          return new Number(text, text, true, Long.parseUnsignedLong(text, 16), true);
        }
      } catch (NumberFormatException e) {
        // More digits than 64 bits hold: no code that we know.
      }
      return new Number(text, "", false, 0, false);
    }

    /** A number written in decimal digits only. */
    boolean decimal() {
      return known && !hex;
    }

    /** Its digits read as hexadecimal, as programs print them that leave {@code 0x} out. */
    long asHex() {
      return hex || !known || digits.length() > 16 ? value : Long.parseUnsignedLong(digits, 16);
    }
  }
}
