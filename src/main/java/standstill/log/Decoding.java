package standstill.log;

/**
 * Bytes to text, whatever wrote them.
 *
 * <p>UTF-16 is told by its mark or by its zero bytes. Everything else is read as UTF-8; a byte that
 * has no place in it is read as Windows-1252, or as code page 437 when the bytes of its line
 * drawing stand there in runs. A serial capture may hold both, so the choice is made byte by byte
 * and nothing is lost.
 */
final class Decoding {
  /** Code page 437 from 0x80, as the console of a PC's firmware draws it. */
  private static final String CP437 =
      "\u00c7\u00fc\u00e9\u00e2\u00e4\u00e0\u00e5\u00e7\u00ea\u00eb\u00e8\u00ef\u00ee\u00ec\u00c4\u00c5"
          + "\u00c9\u00e6\u00c6\u00f4\u00f6\u00f2\u00fb\u00f9\u00ff\u00d6\u00dc\u00a2\u00a3\u00a5\u20a7\u0192"
          + "\u00e1\u00ed\u00f3\u00fa\u00f1\u00d1\u00aa\u00ba\u00bf\u2310\u00ac\u00bd\u00bc\u00a1\u00ab\u00bb"
          + "\u2591\u2592\u2593\u2502\u2524\u2561\u2562\u2556\u2555\u2563\u2551\u2557\u255d\u255c\u255b\u2510"
          + "\u2514\u2534\u252c\u251c\u2500\u253c\u255e\u255f\u255a\u2554\u2569\u2566\u2560\u2550\u256c\u2567"
          + "\u2568\u2564\u2565\u2559\u2558\u2552\u2553\u256b\u256a\u2518\u250c\u2588\u2584\u258c\u2590\u2580"
          + "\u03b1\u00df\u0393\u03c0\u03a3\u03c3\u00b5\u03c4\u03a6\u0398\u03a9\u03b4\u221e\u03c6\u03b5\u2229"
          + "\u2261\u00b1\u2265\u2264\u2320\u2321\u00f7\u2248\u00b0\u2219\u00b7\u221a\u207f\u00b2\u25a0\u00a0";

  /** Windows-1252 from 0x80 to 0x9f; the five unused places stay control characters. */
  private static final String CP1252 =
      "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f"
          + "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

  private Decoding() {}

  static String decode(byte[] bytes) {
    if (bytes.length >= 2) {
      int first = bytes[0] & 0xff;
      int second = bytes[1] & 0xff;
      if (first == 0xff && second == 0xfe) {
        return utf16(bytes, 2, false);
      }
      if (first == 0xfe && second == 0xff) {
        return utf16(bytes, 2, true);
      }
      int zeros = zeros(bytes);
      if (zeros != 0) {
        return utf16(bytes, 0, zeros > 0);
      }
    }
    return utf8(bytes);
  }

  /** 1 when nearly every even byte is zero (big end first), -1 for the odd ones, 0 otherwise. */
  private static int zeros(byte[] bytes) {
    int look = Math.min(bytes.length, 4_096) & ~1;
    int even = 0;
    int odd = 0;
    for (int i = 0; i < look; i += 2) {
      even += bytes[i] == 0 ? 1 : 0;
      odd += bytes[i + 1] == 0 ? 1 : 0;
    }
    int pairs = look / 2;
    if (pairs < 4) {
      return 0;
    }
    if (even * 10 >= pairs * 8 && odd * 10 < pairs) {
      return 1;
    }
    return odd * 10 >= pairs * 8 && even * 10 < pairs ? -1 : 0;
  }

  private static String utf16(byte[] bytes, int from, boolean bigEnd) {
    StringBuilder out = new StringBuilder((bytes.length - from) / 2 + 1);
    int i = from;
    for (; i + 1 < bytes.length; i += 2) {
      int a = bytes[i] & 0xff;
      int b = bytes[i + 1] & 0xff;
      out.append((char) (bigEnd ? a << 8 | b : b << 8 | a));
    }
    return out.toString();
  }

  private static String utf8(byte[] bytes) {
    int from =
        bytes.length >= 3
                && bytes[0] == (byte) 0xef
                && bytes[1] == (byte) 0xbb
                && bytes[2] == (byte) 0xbf
            ? 3
            : 0;
    boolean drawing = drawsLines(bytes);
    StringBuilder out = new StringBuilder(bytes.length - from);
    int i = from;
    while (i < bytes.length) {
      int b = bytes[i] & 0xff;
      if (b < 0x80) {
        out.append((char) b);
        i++;
        continue;
      }
      int length = b >= 0xf0 ? 4 : b >= 0xe0 ? 3 : 2;
      // In code page 437 these two begin a line's end: a horizontal stroke, then a corner.
      boolean stroke = drawing && (b == 0xc4 || b == 0xcd);
      int code = stroke || b < 0xc2 || b > 0xf4 ? -1 : sequence(bytes, i, length);
      if (code < 0) {
        out.append(single(bytes, i, drawing));
        i++;
      } else {
        out.appendCodePoint(code);
        i += length;
      }
    }
    return out.toString();
  }

  /** The code point of a sequence, or -1 when it isn't one (RFC 3629 section 4). */
  private static int sequence(byte[] bytes, int at, int length) {
    if (at + length > bytes.length) {
      return -1;
    }
    int code = bytes[at] & (0x7f >> length);
    for (int i = 1; i < length; i++) {
      int b = bytes[at + i] & 0xff;
      if ((b & 0xc0) != 0x80) {
        return -1;
      }
      code = code << 6 | (b & 0x3f);
    }
    boolean tooLong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
    boolean outside = code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff);
    return tooLong || outside ? -1 : code;
  }

  private static char single(byte[] bytes, int at, boolean drawing) {
    int b = bytes[at] & 0xff;
    if (b == 0x9b && at + 1 < bytes.length && opensSequence(bytes[at + 1])) {
      return '\u009b';
    }
    if (drawing) {
      return CP437.charAt(b - 0x80);
    }
    return b < 0xa0 ? CP1252.charAt(b - 0x80) : (char) b;
  }

  /** Whether a terminal that takes 8-bit control codes would go on with this byte. */
  private static boolean opensSequence(byte next) {
    return (next >= '0' && next <= '?') || next == 'H' || next == 'J' || next == 'K' || next == 'm';
  }

  /** Horizontal lines of code page 437, single or double, in a run that no language has. */
  private static boolean drawsLines(byte[] bytes) {
    int run = 1;
    for (int i = 1; i < bytes.length; i++) {
      run = bytes[i] == bytes[i - 1] ? run + 1 : 1;
      if (run >= 4 && (bytes[i] == (byte) 0xc4 || bytes[i] == (byte) 0xcd)) {
        return true;
      }
    }
    return false;
  }
}
