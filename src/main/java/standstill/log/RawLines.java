package standstill.log;

import java.util.ArrayList;
import java.util.List;

/** Cuts text at LF and CRLF and nowhere else, so that numbers agree with those of an editor. */
final class RawLines {
  private RawLines() {}

  static List<String> of(String text) {
    List<String> lines = new ArrayList<>();
    int from = 0;
    while (from < text.length()) {
      int end = text.indexOf('\n', from);
      if (end < 0) {
        lines.add(text.substring(from));
        break;
      }
      boolean withReturn = end > from && text.charAt(end - 1) == '\r';
      lines.add(text.substring(from, withReturn ? end - 1 : end));
      from = end + 1;
    }
    return lines;
  }
}
