package standstill.audit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.match.SharedTexts;
import standstill.match.SharedTexts.Shared;
import standstill.rank.AnswerModel;
import standstill.text.Problem;

/**
 * No two faults claim the same texts in a way that contradicts the base itself.
 *
 * <p>Overlap alone is no mistake: a general fault catches what specific ones print, a cause
 * produces the signs of what it leads to, and two causes may share a line that says so with a
 * common word for {@code elsewhere}. Two kinds are left. In the first nothing tells the two apart:
 * all signs of one of them are shared, and no check has other answers for them. In the second a
 * sign's word for elsewhere is rarer than the other fault alone makes its line: by how common that
 * fault is among all faults, times the chance with which it shows the text.
 *
 * <p>One finding for each pair, with the texts and places.
 */
final class OverlappingSigns implements Rule {
  /** Places that are listed; a pair that overlaps in more says how many. */
  private static final int MOST_PLACES = 4;

  @Override
  public String id() {
    return "overlapping-signs";
  }

  @Override
  public String title() {
    return "Faults that share a text are told apart, and their signs allow for each other";
  }

  private record Pair(Fault one, Fault other) {}

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    Consequence consequence = new Consequence(base);
    AnswerModel answers = new AnswerModel(base);
    List<Problem> problems = new ArrayList<>();
    overlaps(base)
        .forEach(
            (pair, found) -> {
              boolean byDesign =
                  pair.one().general()
                      || pair.other().general()
                      || !base.canMeet(pair.one().families(), pair.other().families())
                      || consequence.leads(pair.one(), pair.other())
                      || consequence.leads(pair.other(), pair.one());
              List<Shared> denied = found.stream().filter(o -> denies(base, o)).toList();
              if (byDesign) {
                return;
              }
              if (!(hasItsOwn(pair.one(), found) && hasItsOwn(pair.other(), found))
                  && !aCheckTells(pair, base, answers)) {
                problems.add(
                    problem(
                        "nothing tells '%s' from '%s', whose signs match the same texts",
                        pair,
                        found,
                        "narrow a sign, name one fault in the other's leads-to, or give both a check"
                            + " that tells"));
              } else if (!denied.isEmpty()) {
                problems.add(
                    problem(
                        "'%s' and '%s' share a text that a sign says is rarer elsewhere",
                        pair,
                        denied,
                        "narrow the sign that matches, give its elsewhere a commoner word, or name one"
                            + " fault in the other's leads-to"));
              }
            });
    return problems;
  }

  /**
   * Whether the matching sign says that its line is rarer elsewhere than the other fault makes it.
   */
  private static boolean denies(Base base, Shared overlap) {
    double all = base.faults().stream().mapToDouble(f -> f.howCommon().weight()).sum();
    double made = overlap.in().howCommon().weight() / all * overlap.of().shows().value();
    return made > overlap.by().elsewhere().value();
  }

  private static Map<Pair, List<Shared>> overlaps(Base base) {
    Map<Pair, List<Shared>> all = new LinkedHashMap<>();
    SharedTexts.each(
        base,
        each -> {
          boolean inOrder = base.faults().indexOf(each.in()) < base.faults().indexOf(each.other());
          Pair pair =
              inOrder ? new Pair(each.in(), each.other()) : new Pair(each.other(), each.in());
          all.computeIfAbsent(pair, k -> new ArrayList<>()).add(each);
        });
    return all;
  }

  /** Whether a fault has a sign that the overlap does not touch. */
  private static boolean hasItsOwn(Fault fault, List<Shared> found) {
    Set<String> touched = new HashSet<>();
    for (Shared overlap : found) {
      touched.add(overlap.of().id());
      touched.add(overlap.by().id());
    }
    return fault.signs().stream().anyMatch(sign -> !touched.contains(sign.id()));
  }

  private static boolean aCheckTells(Pair pair, Base base, AnswerModel answers) {
    Set<String> asked = new LinkedHashSet<>(pair.one().toldApartBy().keySet());
    asked.addAll(pair.other().toldApartBy().keySet());
    return asked.stream()
        .flatMap(id -> base.check(id).stream())
        .anyMatch(
            check ->
                ChecksTellApart.distance(check, answers, pair.one(), pair.other())
                    >= ChecksTellApart.LEAST);
  }

  private static Problem problem(String message, Pair pair, List<Shared> found, String advice) {
    Map<String, String> places = new LinkedHashMap<>();
    for (Shared overlap : found) {
      places.putIfAbsent(
          overlap.of().id() + " " + overlap.by().id(),
          "'"
              + overlap.text()
              + "' of "
              + overlap.of().where()
              + " is matched by "
              + overlap.by().where());
    }
    int more = places.size() - MOST_PLACES;
    return Problem.warning(
        found.get(0).by().where(),
        String.format(message, pair.one().id(), pair.other().id()),
        places.values().stream().limit(MOST_PLACES).collect(Collectors.joining("\n  "))
            + (more > 0 ? "\n  and " + more + " more" : "")
            + "\n  "
            + advice);
  }
}
