package standstill.log;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Leaves one line of the hundreds that an init prints while it waits for a job: {@code [*** ] A
 * start job is running for X (5s / 1min 30s)}.
 *
 * <p>Within a run of such lines the last of each job stands for all. Jobs may take turns within a
 * run. Any other line ends the run, so nothing moves past it.
 */
final class Spinners {
  private Spinners() {}

  static List<Piece> collapse(List<Piece> pieces) {
    List<Piece> out = new ArrayList<>(pieces.size());
    Map<String, Piece> run = new LinkedHashMap<>();
    for (Piece piece : pieces) {
      String job = job(piece.text());
      if (job.isEmpty()) {
        if (!run.isEmpty()) {
          out.addAll(run.values());
          // Not cleared: that takes as long as the longest run so far.
          run = new LinkedHashMap<>();
        }
        out.add(piece);
      } else {
        run.remove(job);
        run.put(job, piece);
      }
    }
    out.addAll(run.values());
    return out;
  }

  /** What the line says without the moving stars and the time; empty when it has no stars. */
  private static String job(String text) {
    int open = 0;
    while (open < text.length() && text.charAt(open) == ' ') {
      open++;
    }
    if (open >= text.length() || text.charAt(open) != '[') {
      return "";
    }
    int close = text.indexOf(']', open);
    if (close < open + 3 || close > open + 12 || !isStars(text, open + 1, close)) {
      return "";
    }
    int from = close + 1;
    while (from < text.length() && text.charAt(from) == ' ') {
      from++;
    }
    if (from < text.length() && text.charAt(from) == '(') {
      int end = text.indexOf(')', from);
      from = end < 0 || end > from + 20 ? from : end + 1;
    }
    int to = text.lastIndexOf('(');
    return "job " + text.substring(from, to > from ? to : text.length()).strip();
  }

  private static boolean isStars(String text, int from, int to) {
    boolean any = false;
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if (c != '*' && c != ' ') {
        return false;
      }
      any |= c == '*';
    }
    return any;
  }
}
