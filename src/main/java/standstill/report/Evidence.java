package standstill.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import standstill.base.Sign;
import standstill.match.Hit;
import standstill.match.Seen;
import standstill.rank.Cause;
import standstill.rank.Factor;

/**
 * One reason for or against a cause.
 *
 * @param sign id of the sign, or {@code stage} for the stage where progress ended
 * @param weight what the cause's odds were multiplied by
 * @param says what it tells, as a sentence
 * @param lines numbers of the lines in the input; empty when nothing was seen
 * @param text those lines
 */
public record Evidence(
    String sign, double weight, String says, List<Integer> lines, List<String> text) {
  public Evidence {
    lines = List.copyOf(lines);
    text = List.copyOf(text);
  }

  /** Reasons for a cause, the most telling first. */
  public static List<Evidence> reasonsFor(Cause cause) {
    return cause.factors().stream()
        .filter(f -> f.kind() == Factor.Kind.SEEN)
        .map(Evidence::of)
        .toList();
  }

  /** Reasons against a cause: signs that should have been there, and a stage that doesn't fit. */
  public static List<Evidence> reasonsAgainst(Cause cause) {
    List<Evidence> all = new ArrayList<>();
    for (Factor factor : cause.factors()) {
      if (factor.kind() == Factor.Kind.ABSENT && !factor.signs().isEmpty()) {
        all.add(of(factor));
      } else if (factor.kind() == Factor.Kind.ABSENT) {
        all.add(new Evidence("own-signs", factor.value(), factor.why(), List.of(), List.of()));
      } else if (factor.kind() == Factor.Kind.STAGE && factor.value() < 0.5) {
        all.add(new Evidence("stage", factor.value(), factor.why(), List.of(), List.of()));
      }
    }
    return all;
  }

  private static Evidence of(Factor factor) {
    TreeMap<Integer, String> lines = new TreeMap<>();
    Set<String> sentences = new LinkedHashSet<>();
    for (Seen seen : factor.signs()) {
      String sentence = seen.sentence();
      if (!sentence.isEmpty()) {
        sentences.add(sentence);
      }
      for (Hit hit : seen.hits()) {
        lines.putIfAbsent(hit.line(), hit.text());
      }
    }
    Sign head = factor.signs().get(0).sign();
    String says = sentences.isEmpty() ? factor.why() : String.join("; ", sentences);
    return new Evidence(
        head.id(),
        factor.value(),
        says,
        new ArrayList<>(lines.keySet()),
        new ArrayList<>(lines.values()));
  }
}
