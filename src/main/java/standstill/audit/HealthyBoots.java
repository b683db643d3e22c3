package standstill.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Label;
import standstill.base.Sign;
import standstill.match.Seen;
import standstill.text.Problem;

/**
 * No sign stands in more healthy boots than its word for {@code elsewhere} allows.
 *
 * <p>The word is the entry's own statement of how often the line is harmless, so that no list of
 * exemptions is needed: a sign that healthy machines print says so with a commoner word. It is
 * doubted when that many healthy boots, or more, would show it by chance in fewer than one case in
 * twenty (the upper tail of the binomial distribution).
 */
final class HealthyBoots implements Rule {
  private static final double BY_CHANCE = 0.05;
  private static final int MOST_NAMES = 3;

  @Override
  public String id() {
    return "sign-in-healthy-boots";
  }

  @Override
  public String title() {
    return "Signs stand in no more healthy boots than their word for elsewhere allows";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    Map<String, List<String>> boots = new LinkedHashMap<>();
    int healthy = 0;
    for (Subject.Labelled boot : subject.boots()) {
      if (boot.label().label().equals(Label.HEALTHY)) {
        healthy++;
        for (Seen seen : boot.seen().map(s -> s.matches().signs()).orElse(List.of())) {
          boots.computeIfAbsent(seen.sign().id(), k -> new ArrayList<>()).add(boot.label().name());
        }
      }
    }
    List<Problem> problems = new ArrayList<>();
    for (var fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        List<String> names = boots.getOrDefault(sign.id(), List.of());
        if (!names.isEmpty()
            && atLeast(names.size(), healthy, sign.elsewhere().value()) < BY_CHANCE) {
          problems.add(problem(sign, names, healthy));
        }
      }
    }
    return problems;
  }

  private static Problem problem(Sign sign, List<String> names, int healthy) {
    String listed = names.stream().limit(MOST_NAMES).collect(Collectors.joining(", "));
    return Problem.warning(
        sign.where(),
        "sign stands in "
            + names.size()
            + " of "
            + healthy
            + " healthy boots, and says '"
            + sign.elsewhere().word()
            + "' for elsewhere",
        "seen in "
            + listed
            + (names.size() > MOST_NAMES ? ", and others" : "")
            + "; narrow it, or give elsewhere a commoner word");
  }

  /** P(X >= k) of a binomial distribution. */
  static double atLeast(int k, int n, double p) {
    double below = 0;
    double term = Math.pow(1 - p, n);
    for (int i = 0; i < k; i++) {
      below += term;
      term *= (n - i) * p / ((i + 1) * (1 - p));
    }
    return Math.max(0, 1 - below);
  }
}
