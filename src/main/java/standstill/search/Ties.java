package standstill.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import standstill.base.Base;
import standstill.base.Chance;
import standstill.base.Fault;

/**
 * Which entries of a base belong together, and what an entry is worth because of those that it is
 * tied to: who finds a cause also wants the check that proves it and the look by which it is known,
 * though they may share no word with the query. Scores passed along the edges of a graph: after
 * Diaz 2005, "Regularizing ad hoc retrieval scores", from memory. The numbers were set on the
 * judged queries.
 */
final class Ties {
  /** What ties one entry to another; the factor says how much of its score the other is given. */
  private enum Sort {
    /** A cause to what is seen of it. */
    LOOK(0.3),
    /** What is seen to its causes. */
    CAUSE(0.2),
    /** A cause to the checks that prove it. */
    PROOF(1.0),
    /** A cause to its consequences. */
    CONSEQUENCE(0.05),
    /** A consequence to its causes. */
    ORIGIN(0.05);

    private final double gives;

    Sort(double gives) {
      this.gives = gives;
    }
  }

  /** What all further ties of a sort add to the strongest. */
  private static final double FURTHER = 0.3;

  private record Tie(int from, int to, double share) {}

  private final Map<Sort, List<Tie>> ties = new HashMap<>();

  /**
   * The ties of a base.
   *
   * @param entries whose place in this list names them
   */
  Ties(Base base, List<Entry> entries) {
    Map<Kind, Map<String, Integer>> places = new HashMap<>();
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = entries.get(i);
      places.computeIfAbsent(entry.kind(), k -> new HashMap<>()).put(entry.id(), i);
    }
    Map<String, Integer> faults = places.getOrDefault(Kind.FAULT, Map.of());
    Map<String, Integer> symptoms = places.getOrDefault(Kind.SYMPTOM, Map.of());
    Map<String, Integer> checks = places.getOrDefault(Kind.CHECK, Map.of());
    Map<String, Integer> asking = new HashMap<>();
    Map<String, Integer> seenWith = new HashMap<>();
    Map<String, Double> commonest = new HashMap<>();
    for (Fault fault : base.faults()) {
      fault.toldApartBy().keySet().forEach(check -> asking.merge(check, 1, Integer::sum));
      for (String symptom : fault.symptoms()) {
        seenWith.merge(symptom, 1, Integer::sum);
        commonest.merge(symptom, fault.howCommon().weight(), Math::max);
      }
    }
    for (Fault fault : base.faults()) {
      Integer here = faults.get(fault.id());
      for (String symptom : fault.symptoms()) {
        Integer there = symptoms.get(symptom);
        int rivals = seenWith.getOrDefault(symptom, 1);
        double common = fault.howCommon().weight() / commonest.getOrDefault(symptom, 1.0);
        tie(Sort.LOOK, here, there, Math.pow(rivals, -0.5));
        tie(Sort.CAUSE, there, here, Math.pow(common / rivals, 0.3));
      }
      fault
          .toldApartBy()
          .forEach(
              (check, answers) ->
                  tie(
                      Sort.PROOF,
                      here,
                      checks.get(check),
                      surest(answers) * Math.pow(asking.getOrDefault(check, 1), -0.5)));
      for (String consequence : fault.leadsTo()) {
        tie(Sort.CONSEQUENCE, here, faults.get(consequence), 1);
        tie(Sort.ORIGIN, faults.get(consequence), here, 1);
      }
    }
  }

  private static double surest(Map<String, Chance> answers) {
    return answers.values().stream().mapToDouble(Chance::value).max().orElse(0);
  }

  private void tie(Sort sort, @Nullable Integer from, @Nullable Integer to, double share) {
    if (from != null && to != null) {
      ties.computeIfAbsent(sort, s -> new ArrayList<>()).add(new Tie(from, to, share));
    }
  }

  /**
   * The scores with what each entry is given by those that it is tied to. An entry gives the less
   * the further it is behind the best, so that the many that fit a little don't add up.
   *
   * @param scores by place; 0 for what was not found
   */
  double[] spread(double[] scores) {
    double best = DoubleStream.of(scores).max().orElse(0);
    double[] spread = scores.clone();
    if (best <= 0) {
      return spread;
    }
    ties.forEach(
        (sort, all) -> {
          double[] strongest = new double[scores.length];
          double[] sum = new double[scores.length];
          for (Tie tie : all) {
            double given = scores[tie.from()] * scores[tie.from()] / best * tie.share();
            strongest[tie.to()] = Math.max(strongest[tie.to()], given);
            sum[tie.to()] += given;
          }
          for (int i = 0; i < spread.length; i++) {
            spread[i] += sort.gives * (strongest[i] + FURTHER * (sum[i] - strongest[i]));
          }
        });
    return spread;
  }
}
