package standstill.decode;

import java.util.ArrayList;
import java.util.List;

/** Names of bits. */
final class Bits {
  private Bits() {}

  static boolean set(long value, int bit) {
    return (value >>> bit & 1) != 0;
  }

  /** Names of the bits that are set, in the order given: {@code bit, name, bit, name ...}. */
  static List<String> names(long value, Object... bitsAndNames) {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < bitsAndNames.length; i += 2) {
      if (set(value, (Integer) bitsAndNames[i])) {
        names.add((String) bitsAndNames[i + 1]);
      }
    }
    return names;
  }

  static long hex(String digits) {
    return Long.parseUnsignedLong(digits, 16);
  }
}
