package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Risk;
import standstill.base.Stage;
import standstill.base.TestBase;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;
import standstill.store.BaseFolder;

/** Walks over the whole base with random replies; the seed is printed with a failure. */
class CourseTest {
  private static final long SEED = 20261125L;
  private static Base base;
  private static Guide guide;

  @BeforeAll
  static void read() throws IOException {
    base = BaseFolder.builtIn().base();
    guide = new Guide(base);
  }

  private static List<Course.Turn> turns(Random random, int most) {
    List<Course.Turn> turns = new ArrayList<>();
    List<Check> checks = new ArrayList<>(base.checks());
    Collections.shuffle(checks, random);
    for (Check check : checks.subList(0, Math.min(most, checks.size()))) {
      int pick = random.nextInt(check.answers().size() + 1);
      turns.add(
          new Course.Turn(
              Course.Kind.CHECK,
              check.id(),
              pick == check.answers().size()
                  ? Observations.UNKNOWN
                  : check.answers().get(pick).id()));
    }
    for (int i = 0; i < most / 2; i++) {
      Fault fault = base.faults().get(random.nextInt(base.faults().size()));
      Fix fix = fault.fixes().get(random.nextInt(fault.fixes().size()));
      if (turns.stream().noneMatch(t -> t.id().equals(fix.id()))) {
        turns.add(new Course.Turn(Course.Kind.FIX, fix.id(), Course.NO_HELP));
      }
    }
    Collections.shuffle(turns, random);
    return turns;
  }

  private static Course course(List<Course.Turn> turns) {
    return new Course(Optional.of(Stage.ROOT), Set.of(), Set.of(), Set.of(), turns);
  }

  private static Ranking ranking(Course course) {
    return guide.guide(guide.withoutLog(), course.observations(), course.limits(false)).ranking();
  }

  @Test
  void probabilitiesStayADistributionAfterAnySequenceOfReplies() {
    Random random = new Random(SEED);
    for (int round = 0; round < 60; round++) {
      Ranking now = ranking(course(turns(random, 1 + random.nextInt(14))));
      double sum = now.unlisted() + now.noStall();
      for (Cause cause : now.causes()) {
        assertTrue(
            cause.probability() >= 0 && cause.probability() <= 1, "seed " + SEED + ": " + cause);
        sum += cause.probability();
      }
      assertEquals(1, sum, 1e-9, "seed " + SEED + ", round " + round);
    }
  }

  @Test
  void orderOfRepliesMakesNoDifference() {
    Random random = new Random(SEED);
    for (int round = 0; round < 40; round++) {
      List<Course.Turn> turns = turns(random, 6);
      Ranking first = ranking(course(turns));
      Collections.shuffle(turns, random);
      Ranking second = ranking(course(turns));
      for (Cause cause : first.causes()) {
        double other =
            second.causes().stream()
                .filter(c -> c.fault().id().equals(cause.fault().id()))
                .mapToDouble(Cause::probability)
                .findFirst()
                .orElseThrow();
        assertEquals(cause.probability(), other, 1e-12, "seed " + SEED + ", round " + round);
      }
      assertEquals(first.unlisted(), second.unlisted(), 1e-12);
    }
  }

  @Test
  void takingAReplyBackRestoresTheStateExactly() {
    Random random = new Random(SEED);
    for (int round = 0; round < 40; round++) {
      Course before = course(turns(random, 4));
      Check check =
          base.checks().stream()
              .filter(c -> before.turns().stream().noneMatch(t -> t.id().equals(c.id())))
              .skip(random.nextInt(20))
              .findFirst()
              .orElseThrow();
      Course after =
          before.reply(new Course.Turn(Course.Kind.CHECK, check.id(), check.answers().get(0).id()));
      assertEquals(before, after.takeBack(check.id()));
      assertEquals(before, after.back());
      assertEquals(ranking(before), ranking(after.takeBack(check.id())));
    }
  }

  @Test
  void everyWalkEnds() {
    Random random = new Random(SEED);
    for (Stage stage : Stage.values()) {
      Course course = Course.NEW.at(Optional.of(stage));
      Step step = next(course);
      while (!(step instanceof Step.HandOver)) {
        assertTrue(course.turns().size() < Course.MOST_TURNS, "seed " + SEED + ", " + stage);
        course = course.reply(reply(step, random));
        step = next(course);
      }
    }
  }

  private static Step next(Course course) {
    return guide.guide(guide.withoutLog(), course.observations(), course.limits(false)).step();
  }

  private static Course.Turn reply(Step step, Random random) {
    if (step instanceof Step.Ask ask) {
      List<Check.Answer> answers = ask.check().answers();
      return new Course.Turn(
          Course.Kind.CHECK, ask.check().id(), answers.get(random.nextInt(answers.size())).id());
    }
    if (step instanceof Step.Repair repair) {
      return new Course.Turn(Course.Kind.FIX, repair.fix().id(), Course.NO_HELP);
    }
    return new Course.Turn(Course.Kind.LOG, "log", Course.SKIP);
  }

  @Test
  void theTreeIsBoundedAndItsRepliesAreADistribution() {
    for (Stage stage : Stage.values()) {
      Course course =
          Course.NEW
              .at(Optional.of(stage))
              .reply(new Course.Turn(Course.Kind.LOG, "log", Course.SKIP));
      Tree.Node root = Tree.grow(guide, guide.withoutLog(), course, false, Tree.DEEPEST);
      assertTrue(count(root, 1) <= Tree.MOST);
    }
  }

  private static int count(Tree.Node node, int depth) {
    assertTrue(depth <= Tree.DEEPEST);
    int count = 1;
    if (!node.branches().isEmpty()) {
      assertEquals(1, node.branches().stream().mapToDouble(Tree.Branch::chance).sum(), 1e-6);
    }
    for (Tree.Branch branch : node.branches()) {
      Tree.Node next = branch.next();
      count += next == null ? 0 : count(next, depth + 1);
    }
    return count;
  }

  @Test
  void whatDoesNotFitTheBaseIsNamed() {
    Base small =
        new TestBase()
            .check("lamp", 1, "on", "off")
            .fault("cable", 1)
            .fix("plug it in", 2, 0.9, Risk.NONE)
            .add()
            .build();
    Course good =
        Course.NEW
            .reply(new Course.Turn(Course.Kind.CHECK, "lamp", "on"))
            .reply(new Course.Turn(Course.Kind.FIX, "cable/fix/1", Course.NO_HELP));
    assertEquals(List.of(), good.problems(small));
    assertFalse(
        Course.NEW
            .reply(new Course.Turn(Course.Kind.CHECK, "lamp", "green"))
            .problems(small)
            .isEmpty());
    assertFalse(
        Course.NEW
            .reply(new Course.Turn(Course.Kind.FIX, "cable/fix/2", Course.HELPED))
            .problems(small)
            .isEmpty());
    assertFalse(Course.NEW.seeing(Set.of("smoke")).problems(small).isEmpty());
    assertFalse(Course.NEW.lacking("patience").problems(small).isEmpty());
    assertFalse(Course.NEW.triedBefore(Set.of("cable/fix/9")).problems(small).isEmpty());
  }

  @Test
  void aSavedWalkNamesARepairByItsFormerId() {
    Base built =
        new TestBase().fault("cable", 1).fix("plug it in", 2, 0.9, Risk.NONE).add().build();
    Base renamed = built.withRetired(Map.of("wire/fix/3", "cable/fix/1"));
    Course saved =
        Course.NEW
            .triedBefore(Set.of("wire/fix/3"))
            .reply(new Course.Turn(Course.Kind.CHECK, "a", "x"))
            .reply(new Course.Turn(Course.Kind.FIX, "wire/fix/3", Course.SKIP));
    assertEquals(
        Course.NEW
            .triedBefore(Set.of("cable/fix/1"))
            .reply(new Course.Turn(Course.Kind.CHECK, "a", "x"))
            .reply(new Course.Turn(Course.Kind.FIX, "cable/fix/1", Course.SKIP)),
        saved.renewed(renamed));
    assertEquals(saved, saved.renewed(built));
  }

  @Test
  void anotherReplyToTheSameStepStandsInItsPlace() {
    Course course =
        Course.NEW
            .reply(new Course.Turn(Course.Kind.CHECK, "a", "x"))
            .reply(new Course.Turn(Course.Kind.CHECK, "b", "x"))
            .reply(new Course.Turn(Course.Kind.CHECK, "a", "y"));
    assertEquals(
        List.of("a=y", "b=x"), course.turns().stream().map(t -> t.id() + "=" + t.reply()).toList());
  }
}
