package standstill.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.store.BaseFolder;

/** Properties of what answers do to a ranking, on the base that the program carries. */
class BeliefsTest {
  private static final int ROUNDS = 60;
  private static Base base;
  private static Beliefs beliefs;

  @BeforeAll
  static void read() throws IOException {
    base = BaseFolder.builtIn().base();
    beliefs = new Beliefs(base);
  }

  /** A thing that somebody says. */
  private interface Saying {
    Observations on(Observations before);
  }

  private static List<Saying> sayings(Random random) {
    List<Saying> sayings = new ArrayList<>();
    List<Check> checks = new ArrayList<>(base.checks());
    Collections.shuffle(checks, random);
    for (Check check : checks.subList(0, Math.min(checks.size(), 1 + random.nextInt(25)))) {
      String answer =
          random.nextInt(10) == 0
              ? Observations.UNKNOWN
              : check.answers().get(random.nextInt(check.answers().size())).id();
      sayings.add(said -> said.answer(check.id(), answer));
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      Fault fault = base.faults().get(random.nextInt(base.faults().size()));
      fault.fixes().forEach(fix -> sayings.add(said -> said.didNotHelp(fix.id())));
      fault.symptoms().forEach(symptom -> sayings.add(said -> said.sees(symptom)));
    }
    return sayings;
  }

  private static Observations all(List<Saying> sayings) {
    Observations said = Observations.NONE;
    for (Saying saying : sayings) {
      said = saying.on(said);
    }
    return said;
  }

  @Test
  void probabilitiesStayADistribution() {
    for (int seed = 0; seed < ROUNDS; seed++) {
      Observations said = Observations.NONE;
      for (Saying saying : sayings(new Random(seed))) {
        said = saying.on(said);
        Ranking ranking = beliefs.update(beliefs.prior("linux"), said);
        double sum = ranking.unlisted() + ranking.noStall();
        double before = 1;
        for (Cause cause : ranking.causes()) {
          double p = cause.probability();
          assertTrue(p >= 0 && p <= before, "seed " + seed + ": " + p + " after " + before);
          before = p;
          sum += p;
        }
        assertEquals(1, sum, 1e-9, "seed " + seed);
      }
    }
  }

  @Test
  void answerTakenBackLeavesExactlyWhatWasThere() {
    for (int seed = 0; seed < ROUNDS; seed++) {
      Random random = new Random(seed);
      Observations before = all(sayings(random));
      Ranking ranking = beliefs.update(beliefs.prior("linux"), before);
      Check check =
          base.checks().stream()
              .filter(c -> !before.answers().containsKey(c.id()))
              .skip(random.nextInt(40))
              .findFirst()
              .orElseThrow();
      String answer = check.answers().get(0).id();
      Observations after = before.answer(check.id(), answer).takeBack(check.id());
      assertEquals(before, after, "seed " + seed);
      assertEquals(ranking, beliefs.update(beliefs.prior("linux"), after), "seed " + seed);
      String fix = base.faults().get(0).fixes().get(0).id();
      if (!before.tried().contains(fix)) {
        assertEquals(
            ranking,
            beliefs.update(beliefs.prior("linux"), before.didNotHelp(fix).notTried(fix)),
            "seed " + seed);
      }
    }
  }

  @Test
  void orderOfAnswersMakesNoDifference() {
    for (int seed = 0; seed < ROUNDS; seed++) {
      Random random = new Random(seed);
      List<Saying> sayings = sayings(random);
      Map<String, Double> one = chances(all(sayings));
      Collections.shuffle(sayings, random);
      Map<String, Double> other = chances(all(sayings));
      for (Map.Entry<String, Double> each : one.entrySet()) {
        assertEquals(
            each.getValue(),
            other.get(each.getKey()),
            1e-12,
            "seed " + seed + ", " + each.getKey());
      }
    }
  }

  private static Map<String, Double> chances(Observations said) {
    Ranking ranking = beliefs.update(beliefs.prior("linux"), said);
    Map<String, Double> chances = new HashMap<>();
    ranking.causes().forEach(cause -> chances.put(cause.fault().id(), cause.probability()));
    chances.put("unlisted", ranking.unlisted());
    return chances;
  }

  @Test
  void answersOfOneCheckSumToOneUnderEveryFault() {
    for (Check check : base.checks()) {
      for (Fault fault : base.faults()) {
        double sum = 0;
        for (Check.Answer answer : check.answers()) {
          sum += beliefs.answers().chance(fault, check.id(), answer.id());
        }
        assertEquals(1, sum, 1e-9, fault.id() + ", " + check.id());
      }
    }
  }
}
