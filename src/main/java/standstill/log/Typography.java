package standstill.log;

import org.jspecify.annotations.Nullable;

/** Puts back the plain characters that word processors and forums replace with prettier ones. */
final class Typography {
  private Typography() {}

  static String undo(String text) {
    StringBuilder out = null;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      String plain = c < 0x80 ? null : plain(c);
      if (plain != null && out == null) {
        out = new StringBuilder(text.length() + 8).append(text, 0, i);
      }
      if (out != null) {
        if (plain == null) {
          out.append(c);
        } else {
          out.append(plain);
        }
      }
    }
    return out == null ? text : out.toString();
  }

  private static @Nullable String plain(char c) {
    return switch (c) {
      case '\u2018', '\u2019', '\u201a', '\u201b', '\u2032' -> "'";
      case '\u201c', '\u201d', '\u201e', '\u201f', '\u2033' -> "\"";
      case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2015', '\u2212' -> "-";
      case '\u2026' -> "...";
      case '\u00a0', '\u2007', '\u202f', '\u205f', '\u3000' -> " ";
      default -> c >= '\u2000' && c <= '\u200a' ? " " : null;
    };
  }
}
