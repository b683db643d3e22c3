package standstill.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;

/**
 * Updates a ranking by what a person says.
 *
 * <p>Each answer multiplies a hypothesis by P(answer | hypothesis), each fix that did not help
 * multiplies its fault by the chance that it does not cure it, and so does the same repair under
 * another fault. One that helped for a single boot speaks for the faults that it is a repair of,
 * and so does the end of a walk written by hand, each as an answer that may be a slip. "I don't
 * know" and skipping say nothing. Products don't depend on order, and what follows from a set of
 * observations is computed from the start each time, so that taking one back restores the state
 * exactly.
 */
public final class Beliefs {
  private final Base base;
  private final Model model;
  private final AnswerModel answers;
  private final SameRepairs repairs;

  /** The updates of a base. */
  public Beliefs(Base base) {
    this.base = base;
    this.model = new Model(base.scale());
    this.answers = new AnswerModel(base);
    this.repairs = new SameRepairs(base);
  }

  /** The model of answers. */
  public AnswerModel answers() {
    return answers;
  }

  /** Which repairs are the same. */
  public SameRepairs repairs() {
    return repairs;
  }

  /**
   * The ranking before anything was seen: how common each fault is, and no log that could show no
   * stall.
   */
  public Ranking prior(String family) {
    List<Fault> faults = base.faultsOf(family);
    double unlisted = model.number("unlisted-share");
    double total = faults.stream().mapToDouble(f -> f.howCommon().weight()).sum();
    List<Cause> causes = new ArrayList<>();
    for (Fault fault : faults) {
      double prior = (1 - unlisted) * fault.howCommon().weight() / total;
      causes.add(
          new Cause(
              fault,
              prior,
              List.of(
                  new Factor(
                      Factor.Kind.PRIOR,
                      prior,
                      "how common it is: " + fault.howCommon().word(),
                      List.of()))));
    }
    return sorted(causes, faults.isEmpty() ? 1 : unlisted, 0, List.of());
  }

  /** The ranking after what a person has said. */
  public Ranking update(Ranking start, Observations said) {
    List<Cause> weighed = new ArrayList<>();
    double sum = 0;
    for (Cause cause : start.causes()) {
      double likelihood = likelihood(cause.fault(), said);
      double weight = cause.probability() * likelihood;
      sum += weight;
      weighed.add(new Cause(cause.fault(), weight, withAnswers(cause.factors(), likelihood)));
    }
    double elsewhere = likelihoodOtherwise(said);
    double unlisted = start.unlisted() * elsewhere;
    double noStall = start.noStall() * elsewhere;
    sum += unlisted + noStall;
    if (sum <= 0) {
      return start;
    }
    List<Cause> causes = new ArrayList<>();
    for (Cause cause : weighed) {
      causes.add(new Cause(cause.fault(), cause.probability() / sum, cause.factors()));
    }
    return sorted(causes, unlisted / sum, noStall / sum, start.stops());
  }

  /** What was said is one more factor, so that the product of all stays the weight. */
  private static List<Factor> withAnswers(List<Factor> factors, double likelihood) {
    if (likelihood == 1) {
      return factors;
    }
    List<Factor> more = new ArrayList<>(factors);
    more.add(
        new Factor(Factor.Kind.ANSWER, likelihood, "what was said and tried since", List.of()));
    return more;
  }

  /** P(answer) over all hypotheses of a ranking. */
  public double chance(Ranking now, String check, String answer) {
    double chance = (now.unlisted() + now.noStall()) * answers.chanceOtherwise(check, answer);
    for (Cause cause : now.causes()) {
      chance += cause.probability() * answers.chance(cause.fault(), check, answer);
    }
    return chance;
  }

  private double likelihood(Fault fault, Observations said) {
    double likelihood = 1;
    if (said.stage().isPresent() && !fault.stopsIn().contains(said.stage().get())) {
      likelihood *= model.number("stage-misnamed");
    }
    for (String symptom : said.symptoms()) {
      likelihood *=
          fault.symptoms().contains(symptom)
              ? model.number("symptom-shown")
              : model.number("symptom-elsewhere");
    }
    for (Map.Entry<String, String> answer : said.answers().entrySet()) {
      if (!answer.getValue().equals(Observations.UNKNOWN)) {
        likelihood *= answers.chance(fault, answer.getKey(), answer.getValue());
      }
    }
    for (Fix fix : fault.fixes()) {
      if (repairs.isAmong(fix.id(), said.tried())) {
        likelihood *= 1 - fix.cures().value();
      }
    }
    for (String helped : said.helped()) {
      likelihood *=
          fault.fixes().stream()
              .filter(fix -> repairs.same(fix.id(), helped))
              .mapToDouble(fix -> fix.cures().value())
              .max()
              .orElse(model.number("slips"));
    }
    if (!said.foundBy().isEmpty() && !said.foundBy().contains(fault.id())) {
      likelihood *= model.number("slips");
    }
    return likelihood;
  }

  private double likelihoodOtherwise(Observations said) {
    double likelihood = said.stage().isPresent() ? model.number("stage-unlisted") : 1;
    likelihood *= Math.pow(model.number("symptom-elsewhere"), said.symptoms().size());
    for (Map.Entry<String, String> answer : said.answers().entrySet()) {
      if (!answer.getValue().equals(Observations.UNKNOWN)) {
        likelihood *= answers.chanceOtherwise(answer.getKey(), answer.getValue());
      }
    }
    likelihood *= Math.pow(model.number("slips"), said.helped().size());
    if (!said.foundBy().isEmpty()) {
      likelihood *= model.number("slips");
    }
    return likelihood;
  }

  private static Ranking sorted(
      List<Cause> causes, double unlisted, double noStall, List<StopBelief> stops) {
    List<Cause> sorted = new ArrayList<>(causes);
    sorted.sort(
        Comparator.comparingDouble(Cause::probability)
            .reversed()
            .thenComparing(cause -> cause.fault().id()));
    return new Ranking(sorted, unlisted, noStall, stops);
  }
}
