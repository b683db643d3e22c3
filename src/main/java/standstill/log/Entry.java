package standstill.log;

/**
 * A piece with its beginning taken apart.
 *
 * @param piece where it came from and what was to be read
 * @param prefix what its beginning says
 * @param message what stands after the beginning
 * @param bootId the boot that a journal says it belongs to, or empty
 * @param afterCut whether something was left out just before
 */
record Entry(Piece piece, Prefix prefix, String message, String bootId, boolean afterCut) {
  static Entry of(Piece piece, Prefix prefix) {
    String text = piece.text();
    // Blanks at the end are gone where another line cut in, also those of the stamp.
    String message = text.substring(Math.min(prefix.end(), text.length()));
    String stripped = (prefix.record() ? unescaped(message) : message).strip();
    return new Entry(piece, prefix, stripped.equals(text) ? text : stripped, "", false);
  }

  Entry withCut() {
    return new Entry(piece, prefix, message, bootId, true);
  }

  Entry until(int lastLine) {
    Piece longer = new Piece(piece.number(), lastLine, piece.text(), piece.afterClear());
    return new Entry(longer, prefix, message, bootId, afterCut);
  }

  /** Printing characters that a log device writes as {@code \\xNN}. */
  private static String unescaped(String message) {
    int at = message.indexOf("\\x");
    if (at < 0) {
      return message;
    }
    StringBuilder out = new StringBuilder(message.length());
    int from = 0;
    while (at >= 0) {
      int value = at + 4 <= message.length() ? hex(message, at + 2) : -1;
      if (value >= ' ' && value < 0x7f) {
        out.append(message, from, at).append((char) value);
        from = at + 4;
      } else if (value >= 0 && value < ' ') {
        out.append(message, from, at).append(' ');
        from = at + 4;
      }
      at = message.indexOf("\\x", at + 2);
    }
    return out.append(message, from, message.length()).toString();
  }

  private static int hex(String text, int at) {
    int high = Character.digit(text.charAt(at), 16);
    int low = Character.digit(text.charAt(at + 1), 16);
    return high < 0 || low < 0 ? -1 : high * 16 + low;
  }
}
