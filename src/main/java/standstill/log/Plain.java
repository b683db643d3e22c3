package standstill.log;

/** Leaves only what prints: no control characters, no blanks at the end. */
final class Plain {
  private Plain() {}

  static String of(String text) {
    int end = text.length();
    while (end > 0 && isBlank(text.charAt(end - 1))) {
      end--;
    }
    StringBuilder out = null;
    for (int i = 0; i < end; i++) {
      char c = text.charAt(i);
      char plain = c == '\t' ? ' ' : isHidden(c) ? 0 : c;
      if (plain != c && out == null) {
        out = new StringBuilder(end).append(text, 0, i);
      }
      if (out != null && plain != 0) {
        out.append(plain);
      }
    }
    return out == null ? end == text.length() ? text : text.substring(0, end) : out.toString();
  }

  private static boolean isBlank(char c) {
    return c <= ' ' || c == '\u00a0' || isHidden(c);
  }

  /** Control characters, and marks without width that editors and forums put in. */
  private static boolean isHidden(char c) {
    return c < ' '
        || (c >= 0x7f && c <= 0x9f)
        || (c >= '\u200b' && c <= '\u200f')
        || (c >= '\u2028' && c <= '\u202e')
        || c == '\u2060'
        || c == '\u00ad'
        || c == '\ufeff';
  }
}
