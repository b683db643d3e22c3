package standstill.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.base.TestBase;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.match.SignMatcher;
import standstill.trace.Tracer;

class RankerTest {
  static Boot boot(String... messages) {
    List<LogLine> lines = new ArrayList<>();
    for (String message : messages) {
      int number = lines.size() + 1;
      lines.add(
          new LogLine(
              number, number, message, message, OptionalDouble.empty(), OptionalInt.empty(), ""));
    }
    return new Boot(1, lines);
  }

  static Ranking rank(TestBase test, String... messages) {
    Base base = test.build();
    Boot boot = boot(messages);
    var trace = new Tracer(test.family()).trace(boot);
    return new Ranker(base)
        .rank("linux", trace, new SignMatcher(base, test.family()).match(boot, trace));
  }

  private static double probability(Ranking ranking, String id) {
    return ranking.causes().stream()
        .filter(c -> c.fault().id().equals(id))
        .findFirst()
        .orElseThrow()
        .probability();
  }

  @Test
  void posteriorsAreThoseOfTheWeatherExample() {
    // Mitchell, Machine Learning (1997), section 6.9.1, and Witten & Frank, Data Mining, section
    // 4.2: sunny, cool,
    // high, strong: P(no) = 0.795 (exact 0.795417).
    TestBase base =
        new TestBase()
            .fault("yes", 9)
            .sign("outlook sunny", 2.0 / 9, 0.01)
            .sign("temperature cool", 3.0 / 9, 0.01)
            .sign("humidity high", 3.0 / 9, 0.01)
            .sign("wind strong", 3.0 / 9, 0.01)
            .add()
            .fault("no", 5)
            .sign("outlook sunny", 3.0 / 5, 0.01)
            .sign("temperature cool", 1.0 / 5, 0.01)
            .sign("humidity high", 4.0 / 5, 0.01)
            .sign("wind strong", 3.0 / 5, 0.01)
            .add();
    Ranking ranking =
        rank(base, "outlook sunny", "temperature cool", "humidity high", "wind strong");
    assertEquals(0.795417, probability(ranking, "no"), 1e-6);
    assertEquals(0.204583, probability(ranking, "yes"), 1e-6);
  }

  @Test
  void oneTestUpdatesAPriorAsInTheScreeningExample() {
    // Eddy's screening example after Gigerenzer: prior 0.01, sensitivity 0.80, false alarms 0.096 →
    // 0.0776. Here the
    // other hypothesis is 'unlisted', which shows the sign at its background rate.
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.99)
            .fault("ill", 1)
            .sign("test positive", 0.80, 0.096)
            .add();
    assertEquals(0.0776, probability(rank(base, "test positive"), "ill"), 5e-5);
  }

  @Test
  void signsOfOneEventCountOnce() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.5)
            .fault("a", 1)
            .sign("old wording", 0.5, 0.01, "event")
            .sign("new wording", 0.6, 0.01, "event")
            .add();
    double one = probability(rank(base, "new wording"), "a");
    assertEquals(one, probability(rank(base, "old wording", "new wording"), "a"), 1e-12);
  }

  @Test
  void signsOnTheSameLineCountOnce() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.5)
            .fault("a", 1)
            .sign("disk sda is gone", 0.6, 0.01)
            .sign("sda is gone", 0.6, 0.01)
            .add();
    assertEquals(
        0.5 * 60 / (0.5 * 60 + 0.5), probability(rank(base, "disk sda is gone"), "a"), 1e-12);
  }

  @Test
  void anUpstreamCauseOutranksTheFailureThatItEndsIn() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.2)
            .fault("driver-missing", 1)
            .sign("module nvme not found", 0.6, 0.001)
            .leadsTo("no-root")
            .add()
            .fault("no-root", 3)
            .sign("cannot mount root", 0.9, 0.01)
            .add();
    Ranking both = rank(base, "module nvme not found", "cannot mount root");
    assertEquals("driver-missing", both.causes().get(0).fault().id());
    assertEquals("no-root", rank(base, "cannot mount root").causes().get(0).fault().id());
  }

  @Test
  void aGeneralFaultStepsBackBehindASpecificOneOfItsPart() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.2)
            .fault("disk-trouble", 6)
            .general()
            .part("disk")
            .sign("I/O error", 0.9, 0.02)
            .add()
            .fault("bad-sectors", 2)
            .part("disk")
            .sign("Unrecovered read error", 0.7, 0.003)
            .add();
    assertEquals("disk-trouble", rank(base, "I/O error, dev sda").causes().get(0).fault().id());
    assertEquals(
        "bad-sectors",
        rank(base, "Unrecovered read error", "I/O error, dev sda").causes().get(0).fault().id());
  }

  @Test
  void absentSignCountsOnlyWhereThePasteCovers() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.2)
            .milestone("kernel", Stage.KERNEL, Milestone.Proves.BEGINS, "kernel starts")
            .milestone("memory", Stage.KERNEL, Milestone.Proves.WITHIN, "memory found")
            .fault("a", 1)
            .sign("first sign", 0.7, 0.01)
            .sign("second sign", 0.7, 0.01)
            .add();
    Ranking whole = rank(base, "kernel starts", "memory found", "first sign");
    Ranking screenful = rank(base, "memory found", "first sign");
    assertTrue(probability(whole, "a") < probability(screenful, "a"));
    assertTrue(
        whole.causes().get(0).factors().stream().anyMatch(f -> f.kind() == Factor.Kind.ABSENT));
    assertTrue(
        screenful.causes().get(0).factors().stream()
            .noneMatch(f -> f.kind() == Factor.Kind.ABSENT));
  }

  @Test
  void aSignAfterWhichTheBootWentOnProvesLess() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.2)
            .milestone("devices", Stage.DEVICES, Milestone.Proves.BEGINS, "drivers start")
            .milestone("userland", Stage.USERLAND, Milestone.Proves.BEGINS, "services start")
            .fault("a", 1)
            .stage(Stage.DEVICES)
            .sign("device is odd", 0.7, 0.001)
            .add();
    double stopped = probability(rank(base, "drivers start", "device is odd"), "a");
    double wentOn =
        probability(rank(base, "drivers start", "device is odd", "services start"), "a");
    assertTrue(wentOn < stopped / 5, stopped + " " + wentOn);
  }

  @Test
  void aGoodEndRefutesWhatWasSaidBeforeUnlessTheBootStoppedAfterIt() {
    TestBase base = goodEnd().fault("a", 1).stage(Stage.USERLAND).sign("is odd", 0.7, 0.001).add();
    double stopped = probability(rank(base, "services start", "is odd"), "a");
    double ended = probability(rank(base, "services start", "is odd", "services are up"), "a");
    double shell =
        probability(rank(base, "services start", "is odd", "services are up", "shell opens"), "a");
    assertTrue(ended < stopped / 5, stopped + " " + ended);
    assertEquals(stopped, shell, 1e-12);
  }

  @Test
  void aGoodEndRefutesNothingThatLetsTheBootGoOn() {
    TestBase base =
        goodEnd()
            .fault("a", 1)
            .stage(Stage.USERLAND, Stage.USERLAND, Stage.DONE)
            .sign("is odd", 0.7, 0.001)
            .add();
    double ended = probability(rank(base, "services start", "is odd", "services are up"), "a");
    assertEquals(probability(rank(base, "services start", "is odd"), "a"), ended, 1e-12);
  }

  private static TestBase goodEnd() {
    return new TestBase()
        .model("unlisted-share", 0.99)
        .milestone("starts", Stage.USERLAND, Milestone.Proves.BEGINS, "services start")
        .milestone("up", Stage.USERLAND, Milestone.Proves.ENDS, "services are up")
        .milestone("shell", Stage.USERLAND, Milestone.Proves.STOPS, "shell opens");
  }

  @Test
  void withoutAnySignUnlistedWins() {
    TestBase base =
        new TestBase()
            .model("unlisted-share", 0.2)
            .model("no-stall-share", 0.1)
            .fault("only-one", 1)
            .sign("never seen", 0.7, 0.001)
            .add();
    assertEquals(Verdict.UNLISTED, rank(base, "nothing of note").verdict());
  }

  @Test
  void probabilitiesSumToOneForRandomBases() {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    for (int round = 0; round < 200; round++) {
      TestBase base = new TestBase().model("unlisted-share", 0.2).model("no-stall-share", 0.1);
      int faults = 1 + random.nextInt(12);
      for (int f = 0; f < faults; f++) {
        var fault = base.fault("f" + f, 0.1 + random.nextDouble());
        for (int s = 0; s < 1 + random.nextInt(4); s++) {
          fault.sign(
              "word" + random.nextInt(20) + "x",
              0.05 + 0.9 * random.nextDouble(),
              0.001 + 0.5 * random.nextDouble());
        }
        fault.leadsTo("f" + random.nextInt(faults)).add();
      }
      String[] lines = new String[random.nextInt(30)];
      for (int i = 0; i < lines.length; i++) {
        lines[i] = "line word" + random.nextInt(20) + "x";
      }
      Ranking ranking = rank(base, lines);
      double sum = ranking.unlisted() + ranking.noStall();
      for (Cause cause : ranking.causes()) {
        assertTrue(cause.probability() >= 0 && cause.probability() <= 1, "seed " + seed);
        sum += cause.probability();
      }
      assertEquals(1, sum, 1e-9, "seed " + seed);
    }
  }
}
