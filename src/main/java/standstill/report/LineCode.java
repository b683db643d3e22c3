package standstill.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import standstill.decode.Decoder;
import standstill.decode.Meaning;
import standstill.log.LogLine;
import standstill.rank.Cause;

/**
 * A code in a line that matters, and what it means.
 *
 * @param line number of the line in the input
 * @param meaning the code and its meaning; its offsets are those in the line's text
 */
public record LineCode(int line, Meaning meaning) {
  private static final int NEAR_THE_STOP = 25;
  private static final int MOST = 200;

  /**
   * The codes in the proof lines of these causes and in the last lines of the boot, in the order of
   * the lines. A code that comes again with the same meaning is listed where it stands first.
   */
  public static List<LineCode> of(Report.Diagnosis diagnosis, Collection<Cause> causes) {
    Set<Integer> proof = new TreeSet<>();
    for (Cause cause : causes) {
      Evidence.reasonsFor(cause).forEach(e -> proof.addAll(e.lines()));
    }
    List<LogLine> lines = diagnosis.boot().lines();
    List<LineCode> codes = new ArrayList<>();
    Set<String> known = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      LogLine line = lines.get(i);
      if (isNearTheStop(i, lines.size()) || proof.contains(line.number())) {
        for (Meaning meaning : Decoder.explain(line.text())) {
          if (codes.size() < MOST && known.add(key(meaning))) {
            codes.add(new LineCode(line.number(), meaning));
          }
        }
      }
    }
    return codes;
  }

  /** Whether a line is among the last ones, in which codes are always explained. */
  public static boolean isNearTheStop(int index, int lines) {
    return index >= lines - NEAR_THE_STOP;
  }

  /** Whether another code says the same. */
  public boolean says(Meaning other) {
    return key(meaning).equals(key(other));
  }

  private static String key(Meaning meaning) {
    return meaning.kind() + " " + meaning.code() + " " + meaning.meaning();
  }
}
