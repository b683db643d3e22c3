package standstill.log;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.Marks;
import standstill.text.Pattern;

/**
 * Leaves one line of the hundreds that an init prints while it waits for a job.
 *
 * <p>Within a run of such lines the last of each job stands for all. Jobs may take turns within a
 * run. Any other line ends the run, so nothing moves past it.
 */
final class Waiting {
  private static final int LONGEST = 1_000;

  private final List<Pattern> lines;

  Waiting(List<Family> families) {
    lines =
        families.stream()
            .flatMap(family -> family.marks().waiting().stream())
            .map(Example::line)
            .distinct()
            .toList();
  }

  List<Piece> collapse(List<Piece> pieces) {
    List<Piece> out = new ArrayList<>(pieces.size());
    Map<String, Piece> run = new LinkedHashMap<>();
    for (Piece piece : pieces) {
      String job = job(piece.text());
      if (job == null) {
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

  /** What the line waits for; null when it doesn't wait. */
  private @Nullable String job(String text) {
    if (text.isEmpty() || text.length() > LONGEST) {
      return null;
    }
    for (Pattern line : lines) {
      Optional<Pattern.Match> match =
          line.mayBeginWith(text.charAt(0)) ? line.findAtStart(text) : Optional.empty();
      if (match.isPresent()) {
        return match.get().values().get(Marks.JOB);
      }
    }
    return null;
  }
}
