package standstill.score;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Stage;
import standstill.rank.AnswerModel;
import standstill.rank.Beliefs;
import standstill.rank.Observations;
import standstill.rank.Ranker;
import standstill.rank.Ranking;

/**
 * A simulated person at a machine with one fault. What a look shows and whether a repair helps is
 * drawn from the person's seed and the step's name, so that every way of searching meets the same
 * luck.
 */
final class Person {
  static final double DONT_KNOW = 0.10;
  static final double WRONG = 0.05;
  private static final double SYMPTOM_SAID = 0.5;
  private static final int MOST_SYMPTOMS = 3;

  private final long seed;
  private final Fault fault;
  private final AnswerModel answers;
  private final Ranking byLook;
  private final Optional<Ranking> byLog;

  Person(long seed, Base base, String family, Beliefs beliefs, Ranker ranker) {
    this.seed = seed;
    this.answers = beliefs.answers();
    Random random = random("person");
    List<Fault> faults = base.faultsOf(family);
    this.fault = drawn(faults, random);
    List<Stage> stops = fault.stopsIn().stream().sorted().toList();
    Stage stop = stops.get(random.nextInt(stops.size()));
    this.byLook = beliefs.update(beliefs.prior(family), look(stop, random));
    this.byLog =
        MadeUpLog.draw(base, family, fault, stop, random)
            .map(log -> ranker.rank(family, log.trace(), log.matches()));
  }

  private static Fault drawn(List<Fault> faults, Random random) {
    double at =
        random.nextDouble() * faults.stream().mapToDouble(f -> f.howCommon().weight()).sum();
    for (Fault each : faults) {
      at -= each.howCommon().weight();
      if (at < 0) {
        return each;
      }
    }
    return faults.get(faults.size() - 1);
  }

  /** The stage and the symptoms that the person names. */
  private Observations look(Stage stop, Random random) {
    Observations said = Observations.NONE;
    double slip = random.nextDouble();
    if (slip >= DONT_KNOW) {
      Stage[] all = Stage.values();
      said = said.at(slip < DONT_KNOW + WRONG ? all[random.nextInt(all.length)] : stop);
    }
    int named = 0;
    for (String symptom : fault.symptoms()) {
      if (named < MOST_SYMPTOMS && random.nextDouble() < SYMPTOM_SAID) {
        said = said.sees(symptom);
        named++;
      }
    }
    return said;
  }

  /** For what the person's luck is drawn from. */
  Random random(String what) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L + what.hashCode());
    random.nextLong();
    return random;
  }

  /** The causes by what is seen on the screen. */
  Ranking byLook() {
    return byLook;
  }

  /** The causes by the log; empty when the boot prints nothing. */
  Optional<Ranking> byLog() {
    return byLog;
  }

  /** Whether the person manages to get a log when asked to. */
  boolean getsLog() {
    return byLog.isPresent() && random("log").nextDouble() >= DONT_KNOW;
  }

  String answer(Check check) {
    return answer(check, fault, answers, random(check.id()));
  }

  /** What somebody at a machine with a fault answers, with slips. */
  static String answer(Check check, Fault fault, AnswerModel answers, Random random) {
    double slip = random.nextDouble();
    if (slip < DONT_KNOW) {
      return Observations.UNKNOWN;
    }
    double at = random.nextDouble();
    int right = check.answers().size() - 1;
    for (int i = 0; i < check.answers().size(); i++) {
      at -= answers.chance(fault, check.id(), check.answers().get(i).id());
      if (at < 0) {
        right = i;
        break;
      }
    }
    int shift =
        slip < DONT_KNOW + WRONG && check.answers().size() > 1
            ? 1 + random.nextInt(check.answers().size() - 1)
            : 0;
    return check.answers().get((right + shift) % check.answers().size()).id();
  }

  boolean has(Fault other) {
    return other.id().equals(fault.id());
  }

  boolean isCuredBy(Fix fix) {
    return fault.fixes().contains(fix) && random(fix.id()).nextDouble() < fix.cures().value();
  }
}
