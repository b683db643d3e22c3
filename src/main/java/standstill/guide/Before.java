package standstill.guide;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Fix;
import standstill.rank.Cause;
import standstill.rank.Ranking;

/** What a person may well have tried before asking: the repairs of the likeliest causes. */
public final class Before {
  private Before() {}

  /** At most so many fixes, by how likely their causes are, no title twice. */
  public static List<Fix> fixes(Ranking ranking, int most) {
    List<Fix> fixes = new ArrayList<>();
    for (Cause cause : ranking.causes().stream().limit(12).toList()) {
      for (Fix fix : cause.fault().fixes()) {
        if (fixes.size() < most && fixes.stream().noneMatch(f -> f.title().equals(fix.title()))) {
          fixes.add(fix);
        }
      }
    }
    return fixes;
  }
}
