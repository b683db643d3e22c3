package standstill.guide;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import standstill.base.Base;
import standstill.base.Check;
import standstill.rank.AnswerModel;
import standstill.rank.Cause;
import standstill.rank.Ranking;

/**
 * The one look that would settle most: the check whose answer is expected to take away the most
 * uncertainty about the cause for the minutes that it costs.
 *
 * @param check what to look at
 * @param points for each answer, the cause that it would make the likeliest
 */
public record Look(Check check, Map<String, Cause> points) {
  /** Causes that matter for it. */
  private static final int CAUSES = 12;

  /** Minutes that going to a machine costs on top of those of the check. */
  private static final double SET_UP = 3;

  /** Bits below which nothing would be settled. */
  private static final double LEAST = 0.1;

  public Look {
    points = java.util.Collections.unmodifiableMap(new TreeMap<>(points));
  }

  /** The best look, if one would tell something. */
  public static Optional<Look> best(Base base, Ranking ranking) {
    AnswerModel answers = new AnswerModel(base);
    List<Cause> causes = ranking.causes().stream().limit(CAUSES).toList();
    Set<String> ids = new LinkedHashSet<>();
    ranking.stop().ifPresent(stop -> ids.addAll(stop.stop().looks()));
    causes.forEach(cause -> ids.addAll(cause.fault().toldApartBy().keySet()));
    return ids.stream()
        .flatMap(id -> base.check(id).stream())
        .filter(check -> gain(check, causes, ranking, answers) >= LEAST)
        .max(
            Comparator.comparingDouble(
                (Check check) ->
                    gain(check, causes, ranking, answers) / (check.minutes() + SET_UP)))
        .map(check -> new Look(check, points(check, causes, answers)));
  }

  private static double gain(
      Check check, List<Cause> causes, Ranking ranking, AnswerModel answers) {
    double[][] parts = new double[check.answers().size()][causes.size() + 1];
    double known = causes.stream().mapToDouble(Cause::probability).sum();
    for (int r = 0; r < parts.length; r++) {
      String answer = check.answers().get(r).id();
      for (int c = 0; c < causes.size(); c++) {
        parts[r][c] =
            causes.get(c).probability() * answers.chance(causes.get(c).fault(), check.id(), answer);
      }
      parts[r][causes.size()] =
          Math.max(0, 1 - known - ranking.noStall()) * answers.chanceOtherwise(check.id(), answer);
    }
    return Entropy.gain(parts);
  }

  private static Map<String, Cause> points(Check check, List<Cause> causes, AnswerModel answers) {
    Map<String, Cause> points = new TreeMap<>();
    for (Check.Answer answer : check.answers()) {
      causes.stream()
          .filter(cause -> cause.fault().toldApartBy().containsKey(check.id()))
          .max(
              Comparator.comparingDouble(
                  cause ->
                      cause.probability() * answers.chance(cause.fault(), check.id(), answer.id())))
          .ifPresent(cause -> points.put(answer.id(), cause));
    }
    return points;
  }
}
