package standstill.rank;

import java.util.HashMap;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Check;
import standstill.base.Fault;

/**
 * P(answer | fault) for every check, out of the words in the base.
 *
 * <p>A fault's named answers have the chances of their words; those that it leaves out share what
 * is left over, in proportion to how common they are otherwise. When the words sum to more than 1
 * they are scaled. Every answer keeps a small chance under every fault: people misread, and a log
 * can mislead.
 */
public final class AnswerModel {
  /** Share of answers that are taken to be slips, spread evenly over the answers. */
  private final double slips;

  private final Map<String, Map<String, Double>> otherwise = new HashMap<>();
  private final Map<String, Map<String, Map<String, Double>>> byFault = new HashMap<>();

  /** The model of a base. */
  public AnswerModel(Base base) {
    this.slips = new Model(base.scale()).number("slips");
    for (Check check : base.checks()) {
      Map<String, Double> plain = new HashMap<>();
      for (Check.Answer answer : check.answers()) {
        plain.put(answer.id(), answer.otherwise().value());
      }
      otherwise.put(check.id(), scaled(plain));
    }
    for (Fault fault : base.faults()) {
      Map<String, Map<String, Double>> own = new HashMap<>();
      fault
          .toldApartBy()
          .forEach(
              (checkId, named) ->
                  base.check(checkId).ifPresent(c -> own.put(checkId, combine(c, named))));
      byFault.put(fault.id(), own);
    }
  }

  private Map<String, Double> combine(Check check, Map<String, Chance> named) {
    double sum = named.values().stream().mapToDouble(Chance::value).sum();
    double left = Math.max(0, 1 - sum);
    double plainOfOthers =
        check.answers().stream()
            .filter(a -> !named.containsKey(a.id()))
            .mapToDouble(a -> a.otherwise().value())
            .sum();
    Map<String, Double> all = new HashMap<>();
    for (Check.Answer answer : check.answers()) {
      Chance chance = named.get(answer.id());
      all.put(
          answer.id(),
          chance != null
              ? chance.value()
              : plainOfOthers == 0 ? 0 : left * answer.otherwise().value() / plainOfOthers);
    }
    return scaled(all);
  }

  /** Scaled to sum 1, with the share of slips mixed in. */
  private Map<String, Double> scaled(Map<String, Double> chances) {
    double sum = chances.values().stream().mapToDouble(c -> c).sum();
    Map<String, Double> scaled = new HashMap<>();
    chances.forEach(
        (answer, chance) ->
            scaled.put(
                answer,
                (1 - slips) * (sum == 0 ? 1.0 / chances.size() : chance / sum)
                    + slips / chances.size()));
    return scaled;
  }

  /** P(answer | fault); the chances of one check's answers sum to 1. */
  public double chance(Fault fault, String check, String answer) {
    Map<String, Double> own = byFault.getOrDefault(fault.id(), Map.of()).get(check);
    return own == null ? chanceOtherwise(check, answer) : own.getOrDefault(answer, slips);
  }

  /** P(answer | a cause that does not mention the check). */
  public double chanceOtherwise(String check, String answer) {
    return otherwise.getOrDefault(check, Map.of()).getOrDefault(answer, 1.0);
  }
}
