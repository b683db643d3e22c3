package standstill.log;

import java.util.List;

/** Says why a text can't be a boot log, in words for the person who pasted it. */
final class NotALog {
  private static final int FEW_LINES = 60;

  private NotALog() {}

  /** The reason, or empty when the text may be a boot log. */
  static String reason(String text, List<Entry> entries, int hits) {
    if (text.isBlank() || (entries.isEmpty() && !isBinary(text))) {
      return "there is no text to read";
    }
    if (isBinary(text)) {
      return "this looks like a binary file, not like text";
    }
    int stamped = 0;
    for (Entry entry : entries) {
      stamped += entry.prefix().isPresent() ? 1 : 0;
    }
    if (hits == 0 && stamped == 0) {
      return "no line looks like one that a kernel, a boot loader or an init prints";
    }
    if (entries.size() > FEW_LINES && hits < 3 && stamped * 50 < entries.size()) {
      return "hardly any line looks like one that a kernel, a boot loader or an init prints";
    }
    return "";
  }

  /** Whether a good part of the characters are ones that no terminal shows. */
  private static boolean isBinary(String text) {
    int look = Math.min(text.length(), 200_000);
    int odd = 0;
    for (int i = 0; i < look; i++) {
      char c = text.charAt(i);
      boolean usual = c == '\n' || c == '\r' || c == '\t' || c == '\b' || c == 27 || c == 0;
      odd += !usual && (c < ' ' || (c >= 0x7f && c < 0xa0) || c == '\ufffd') ? 1 : 0;
    }
    return odd * 20 > look;
  }
}
