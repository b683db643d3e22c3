package standstill.guide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.rank.Beliefs;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;

/**
 * What is left where the guide would propose nothing more: the repairs of the causes that are still
 * likely, or that an answer speaks for, which were neither tried nor ruled out. Whether one of them
 * is worth its minutes and its risk is the person's to say; the only true cure may be among them.
 */
final class Left {
  /** Probability from which all that is left of a cause is shown. */
  private static final double LIKELY = 0.3;

  /** The same for a cause that an answer speaks for. */
  private static final double SPOKEN_FOR = 0.05;

  /** The same for the likeliest causes, where nothing is left of the likely ones. */
  private static final double LEAST = 0.001;

  private static final int MOST_CAUSES = 3;
  private static final int MOST = 12;

  private final Base base;
  private final Beliefs beliefs;

  Left(Base base, Beliefs beliefs) {
    this.base = base;
    this.beliefs = beliefs;
  }

  /** The end of a walk, with what is left. */
  Step.HandOver handOver(Ranking now, Observations said, Limits limits) {
    List<Step.Left> left = left(now, said, limits);
    if (now.noStall() > 0.5) {
      return new Step.HandOver(
          "Nothing shows that this boot stopped, so there is nothing to repair."
              + (left.isEmpty()
                  ? ""
                  : " If it did stop, this comes nearest: choose, or hand over."),
          left);
    }
    List<String> words = new ArrayList<>();
    if (!said.helped().isEmpty()) {
      words.add("You are in, for this boot only, and nothing that is listed here made it hold.");
    }
    if (left.isEmpty()) {
      words.add(
          said.tried().isEmpty()
              ? "No listed cause is likely enough to start a repair on."
              : "Every repair that is listed for the causes that are still likely has been tried.");
    } else {
      words.add(
          left.stream().allMatch(l -> l.why().equals(NOT_WORTH_IT))
              ? "Nothing that is left is worth it by our reckoning, yet it was not tried and may be what"
                  + " cures: look at the risk and choose."
              : "What is left was not tried and may be what cures: look at the risk and choose.");
    }
    long unknown = said.answers().values().stream().filter(Observations.UNKNOWN::equals).count();
    if (unknown > 0) {
      words.add(
          unknown == 1
              ? "One question is open; its answer may tell more."
              : unknown + " questions are open; their answers may tell more.");
    }
    words.add(
        left.isEmpty()
            ? "Somebody more experienced should look at it."
            : "Or let somebody more experienced look at it.");
    return new Step.HandOver(String.join(" ", words), left);
  }

  private static final String NOT_WORTH_IT = "not worth it by our reckoning";

  private List<Step.Left> left(Ranking now, Observations said, Limits limits) {
    List<Step.Left> left = new ArrayList<>();
    now.listed().stream()
        .filter(
            cause ->
                cause.probability() >= LIKELY
                    || cause.probability() >= SPOKEN_FOR && isSpokenFor(cause.fault(), said))
        .forEach(cause -> add(left, cause, said, limits));
    // Where the likely causes are exhausted, one of the others is it, or none that is listed.
    int causes = 0;
    for (Cause cause : left.isEmpty() ? now.listed() : List.<Cause>of()) {
      int before = left.size();
      if (causes < MOST_CAUSES && cause.probability() >= LEAST) {
        add(left, cause, said, limits);
        causes += left.size() > before ? 1 : 0;
      }
    }
    return left.stream().limit(MOST).toList();
  }

  private void add(List<Step.Left> left, Cause cause, Observations said, Limits limits) {
    cause.fault().fixes().stream()
        .filter(fix -> isOpen(fix, said, limits))
        .sorted(Comparator.comparing(Fix::isGrave))
        .filter(fix -> left.stream().noneMatch(l -> beliefs.repairs().same(l.fix().id(), fix.id())))
        .map(
            fix ->
                new Step.Left(
                    cause.fault(),
                    fix,
                    cause.probability(),
                    cause.probability() * fix.cures().value(),
                    why(fix, limits)))
        .toList()
        .forEach(left::add);
  }

  /** Whether a repair was neither done nor ruled out, and what comes before it is not refused. */
  private boolean isOpen(Fix fix, Observations said, Limits limits) {
    return !beliefs.repairs().isAmong(fix.id(), said.tried())
        && !beliefs.repairs().isAmong(fix.id(), said.helped())
        && (said.helped().isEmpty() || fix.scope().lasting())
        && limits.known().allows(fix.scope().when(), said)
        && fix.scope()
            .first()
            .filter(id -> limits.skipped().contains(id) && !said.tried().contains(id))
            .isEmpty();
  }

  private String why(Fix fix, Limits limits) {
    String lacking =
        fix.needs().stream()
            .filter(limits.lacks()::contains)
            .map(need -> base.scale().needs().getOrDefault(need, need))
            .collect(Collectors.joining(", "));
    if (!lacking.isEmpty()) {
      return "needs what you lack: " + lacking;
    }
    return beliefs.repairs().isAmong(fix.id(), limits.skipped()) ? "you skipped it" : NOT_WORTH_IT;
  }

  /** Whether some answer is likelier under a fault than without it. */
  private boolean isSpokenFor(Fault fault, Observations said) {
    for (Map.Entry<String, String> answer : said.answers().entrySet()) {
      if (!answer.getValue().equals(Observations.UNKNOWN)
          && beliefs.answers().chance(fault, answer.getKey(), answer.getValue())
              > beliefs.answers().chanceOtherwise(answer.getKey(), answer.getValue())) {
        return true;
      }
    }
    return false;
  }

  /** How likely a fault is. */
  static double likely(Ranking now, Fault fault) {
    return now.causes().stream()
        .filter(cause -> cause.fault().id().equals(fault.id()))
        .mapToDouble(Cause::probability)
        .findFirst()
        .orElse(0);
  }
}
