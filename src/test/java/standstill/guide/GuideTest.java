package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Circumstance;
import standstill.base.Risk;
import standstill.base.TestBase;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;
import standstill.rank.StopBelief;
import standstill.text.Position;

/** What the guide proposes, in small invented bases. */
class GuideTest {
  private static Step next(Base base, Observations said, Limits limits) {
    Guide guide = new Guide(base);
    return guide.guide(guide.withoutLog("linux"), said, limits).step();
  }

  private static Step next(Base base, Observations said) {
    return next(base, said, Limits.none(true));
  }

  private static String fix(Step step) {
    return step instanceof Step.Repair repair ? repair.fix().id() : step.toString();
  }

  private static List<String> left(Step step) {
    return step instanceof Step.HandOver over
        ? over.left().stream().map(l -> l.fix().id()).toList()
        : List.of("no handing over, but " + step);
  }

  /**
   * A likely cause whose only repair takes longer and risks more than it is reckoned to be worth.
   */
  private static Base dear() {
    return new TestBase()
        .check("lamp", 1, "on", "off")
        .fault("disk", 90)
        .fix("replace the disk", 120, 0.3, Risk.HANDS_INSIDE)
        .add()
        .fault("cable", 10)
        .answer("lamp", "on", 0.9)
        .fix("plug it in", 2, 0.9, Risk.NONE)
        .add()
        .build();
  }

  @Test
  void whatIsNotWorthItIsShownWithItsRiskBeforeHandingOver() {
    Step end = next(dear(), Observations.NONE.didNotHelp("cable/fix/1"));
    assertEquals(List.of("disk/fix/1"), left(end));
    Step.HandOver over = (Step.HandOver) end;
    assertEquals("not worth it by our reckoning", over.left().get(0).why());
    assertTrue(over.left().get(0).fix().isGrave());
    assertFalse(over.reason().contains("tried or ruled out"), over.reason());
    assertTrue(over.reason().contains("was not tried"), over.reason());
  }

  @Test
  void whatThePersonChoosesIsTheNextStep() {
    Limits limits = Limits.none(true).choose("disk/fix/1");
    assertEquals(
        "disk/fix/1", fix(next(dear(), Observations.NONE.didNotHelp("cable/fix/1"), limits)));
  }

  @Test
  void whatComesFirstIsProposedBeforeWhatWasChosen() {
    Base base =
        new TestBase()
            .fault("disk", 1)
            .fix("save the data", 60, 0.01, Risk.NONE)
            .fix("repair the file system", 20, 0.5, Risk.DATA)
            .after(1)
            .add()
            .build();
    Limits limits = Limits.none(true).choose("disk/fix/2");
    assertEquals("disk/fix/1", fix(next(base, Observations.NONE, limits)));
    assertEquals("disk/fix/2", fix(next(base, Observations.NONE.didNotHelp("disk/fix/1"), limits)));
  }

  @Test
  void whatWasSkippedIsLeftAndSaysSo() {
    Step end =
        next(
            dear(),
            Observations.NONE.didNotHelp("cable/fix/1"),
            Limits.none(true).skip("disk/fix/1"));
    assertEquals("you skipped it", ((Step.HandOver) end).left().get(0).why());
  }

  @Test
  void nothingIsLeftOnlyWhenEverythingWasTried() {
    Step end = next(dear(), Observations.NONE.didNotHelp("cable/fix/1").didNotHelp("disk/fix/1"));
    assertEquals(List.of(), left(end));
    assertTrue(((Step.HandOver) end).reason().contains("has been tried"));
  }

  @Test
  void openQuestionsAreNamedAtTheEnd() {
    Step end =
        next(
            dear(),
            Observations.NONE.didNotHelp("cable/fix/1").answer("lamp", Observations.UNKNOWN));
    assertTrue(((Step.HandOver) end).reason().contains("One question is open"));
  }

  @Test
  void aCauseThatAnAnswerSpeaksForIsNeverLeftOut() {
    Base base =
        new TestBase()
            .check("lamp", 1, "on", "off")
            .fault("disk", 60)
            .fix("replace the disk", 200, 0.3, Risk.HANDS_INSIDE)
            .add()
            .fault("board", 10)
            .answer("lamp", "on", 0.9)
            .fix("replace the board", 240, 0.3, Risk.HANDS_INSIDE)
            .add()
            .build();
    assertFalse(left(next(base, Observations.NONE)).contains("board/fix/1"));
    assertTrue(left(next(base, Observations.NONE.answer("lamp", "on"))).contains("board/fix/1"));
  }

  @Test
  void whoKnowsBetterThanALogThatLooksHealthyIsNotTurnedAway() {
    Guide guide = new Guide(forOnce());
    Ranking plain = guide.withoutLog("linux");
    Ranking healthy =
        new Ranking(
            plain.causes().stream()
                .map(c -> new Cause(c.fault(), c.probability() * 0.01, c.factors()))
                .toList(),
            plain.unlisted() * 0.01,
            0.99,
            List.of());
    Step first = guide.guide(healthy, Observations.NONE, Limits.none(true)).step();
    assertTrue(left(first).contains("clock/fix/1"), first.toString());
    assertTrue(((Step.HandOver) first).reason().startsWith("Nothing shows that this boot stopped"));
    Observations said = Observations.NONE.didNotHelp("clock/fix/1");
    assertEquals("words/fix/1", fix(guide.guide(healthy, said, Limits.none(true)).step()));
  }

  private static Base forOnce() {
    return new TestBase()
        .fault("words", 1)
        .fix("change the line for one start", 2, 0.9, Risk.NONE)
        .forOneBoot()
        .fix("write the line for good", 10, 0.8, Risk.SETTINGS)
        .add()
        .fault("clock", 1)
        .fix("set the clock", 1, 0.9, Risk.NONE)
        .add()
        .build();
  }

  @Test
  void aRepairForOneBootThatHelpedGoesOnToTheLastingOne() {
    Step step = next(forOnce(), Observations.NONE.helpedOnce("words/fix/1"));
    assertEquals("words/fix/2", fix(step));
    assertTrue(((Step.Repair) step).why().words().contains("make"), step.toString());
  }

  @Test
  void onlyALastingRepairEndsAWalk() {
    Course course =
        Course.NEW.reply(new Course.Turn(Course.Kind.FIX, "words/fix/1", Course.HELPED));
    assertTrue(course.cured(forOnce()).isEmpty());
    assertEquals(List.of("words/fix/1"), course.temporary(forOnce()));
    Course more = course.reply(new Course.Turn(Course.Kind.FIX, "words/fix/2", Course.HELPED));
    assertEquals("words/fix/2", more.cured(forOnce()).orElseThrow());
  }

  @Test
  void whatIsKnownOfTheSystemRemovesRepairsAndQuestions() {
    Base base =
        new TestBase()
            .fault("root", 1)
            .fix("for one file system", 1, 0.9, Risk.NONE)
            .when("ext4")
            .fix("for any", 5, 0.5, Risk.NONE)
            .when("not no-disk-at-all")
            .add()
            .build();
    assertEquals("root/fix/1", fix(next(base, Observations.NONE)));
    Limits other = Limits.none(true).knowing(new Known(Set.of("xfs"), Set.of("ext4")));
    assertEquals("root/fix/2", fix(next(base, Observations.NONE, other)));
    Limits noDisk = Limits.none(true).knowing(new Known(Set.of("no-disk-at-all"), Set.of("ext4")));
    assertEquals(List.of(), left(next(base, Observations.NONE, noDisk)));
  }

  @Test
  void casesOutOfTheQuestionAreNotThere() {
    Position where = Position.ofFile("test");
    Circumstance init =
        new Circumstance(
            "init",
            "init",
            List.of(
                new Circumstance.Case("systemd", "s", "init", List.of()),
                new Circumstance.Case("runit", "r", "init", List.of()),
                new Circumstance.Case("openrc", "o", "init", List.of())),
            where);
    Known one = Known.of(List.of(init), Map.of("init", Set.of("runit")));
    assertEquals(new Known(Set.of("runit"), Set.of("systemd", "openrc")), one);
    Known two = Known.of(List.of(init), Map.of("init", Set.of("runit", "openrc")));
    assertEquals(new Known(Set.of(), Set.of("systemd")), two);
    assertEquals(Known.NOTHING, Known.of(List.of(init), Map.of()));
  }

  /** One cause, two repairs, and a look of a minute that tells which of them fits. */
  private static Base full() {
    return new TestBase()
        .check("room", 1, "full", "free")
        .fault("service", 1)
        .answer("room", "full", 0.5)
        .answer("room", "free", 0.5)
        .fix("make room", 30, 0.9, Risk.NONE)
        .when("room/full")
        .fix("correct the settings", 30, 0.9, Risk.NONE)
        .when("not room/full")
        .add()
        .build();
  }

  @Test
  void aLookThatChoosesTheRepairComesFirstThoughTheCauseIsCertain() {
    Step step = next(full(), Observations.NONE);
    assertEquals("room", step instanceof Step.Ask ask ? ask.check().id() : step.toString());
    assertEquals("service/fix/1", fix(next(full(), Observations.NONE.answer("room", "full"))));
    assertEquals("service/fix/2", fix(next(full(), Observations.NONE.answer("room", "free"))));
  }

  @Test
  void whoCantTellIsOfferedBothRepairs() {
    Observations said = Observations.NONE.answer("room", Observations.UNKNOWN);
    assertEquals("service/fix/1", fix(next(full(), said)));
    assertEquals("service/fix/2", fix(next(full(), said.didNotHelp("service/fix/1"))));
  }

  @Test
  void theSameRepairIsNotOfferedAgainUnderAnotherFault() {
    Base base =
        new TestBase()
            .fault("one", 2)
            .fix("start the older kernel", 5, 0.7, Risk.NONE)
            .add()
            .fault("other", 2)
            .fix("start the older kernel", 5, 0.7, Risk.NONE)
            .fix("update the firmware", 5, 0.7, Risk.NONE)
            .add()
            .build();
    String first = fix(next(base, Observations.NONE));
    assertTrue(first.endsWith("/fix/1"), first);
    assertEquals("other/fix/2", fix(next(base, Observations.NONE.didNotHelp(first))));
  }

  @Test
  void theChanceOfARepairOfSeveralFaultsIsTheirSum() {
    Base base =
        new TestBase()
            .fault("one", 1)
            .fix("start the older kernel", 5, 0.8, Risk.NONE)
            .add()
            .fault("other", 1)
            .fix("start the older kernel", 5, 0.8, Risk.NONE)
            .add()
            .build();
    assertEquals(0.8, ((Step.Repair) next(base, Observations.NONE)).chance(), 1e-9);
  }

  @Test
  void onlyQuestionsThatHaveToDoWithTheStopAreAsked() {
    Base base =
        new TestBase()
            .check("accounts", 1, "yes", "no")
            .check("lamps", 1, "on", "off")
            .stop("login-loop", "accounts")
            .stop("no-network")
            .fault("shell", 50)
            .endsIn("login-loop", 0.9)
            .fix("put the shell back", 10, 0.9, Risk.SETTINGS)
            .add()
            .fault("home", 45)
            .endsIn("login-loop", 0.9)
            .fix("make room", 60, 0.9, Risk.SETTINGS)
            .add()
            .fault("cable", 5)
            .endsIn("no-network", 0.9)
            .answer("lamps", "off", 0.95)
            .fix("plug it in", 2, 0.9, Risk.NONE)
            .add()
            .build();
    Ranking plain = new Guide(base).withoutLog("linux");
    assertTrue(ToThePoint.checks(plain).contains("lamps"));
    Ranking looping =
        new Ranking(
            plain.causes(),
            plain.unlisted(),
            plain.noStall(),
            List.of(new StopBelief(base.stops().get(0), 0.9, List.of())));
    assertEquals(Set.of("accounts"), ToThePoint.checks(looping));
  }

  @Test
  void aDarkScreenLeadsThroughTheWalkWrittenForItAndGoesOnFromItsEnd() {
    Base base =
        new TestBase()
            .walk("no-picture", "dark", "memory")
            .fault("memory", 1)
            .fix("seat the memory", 10, 0.7, Risk.HANDS_INSIDE)
            .add()
            .fault("menu", 30)
            .fix("wait", 1, 0.7, Risk.NONE)
            .add()
            .build();
    Course course = Course.NEW.seeing(Set.of("dark"));
    Step first = next(base, course.observations(), course.limits(false));
    assertEquals(
        "no-picture", first instanceof Step.Follow follow ? follow.walk().id() : first.toString());
    Course ended = course.reply(new Course.Turn(Course.Kind.WALK, "no-picture", "memory"));
    assertEquals(List.of(), ended.problems(base));
    Guide guide = new Guide(base);
    Guidance after =
        guide.guide(guide.withoutLog("linux"), ended.observations(), ended.limits(false));
    assertFalse(after.step() instanceof Step.Follow);
    assertTrue(
        Left.likely(after.ranking(), base.faults().get(0))
            > 5 * Left.likely(guide.withoutLog("linux"), base.faults().get(0)));
    Course none = course.reply(new Course.Turn(Course.Kind.WALK, "no-picture", Course.NO_CAUSE));
    assertEquals(course.observations(), none.observations());
  }

  @Test
  void notKnowingLowersNoCause() {
    Guide guide = new Guide(dear());
    Ranking before = guide.withoutLog("linux");
    Ranking after =
        guide
            .guide(
                before,
                Observations.NONE.answer("lamp", Observations.UNKNOWN),
                Limits.none(true).skip("disk/fix/1"))
            .ranking();
    before
        .causes()
        .forEach(c -> assertEquals(c.probability(), Left.likely(after, c.fault()), 1e-12));
  }

  @Test
  void aSavedWalkKeepsApartWhatWasTriedWhatIsOpenAndWhatHelpedOnce() {
    Course course =
        Course.NEW
            .triedBefore(Set.of("clock/fix/1"))
            .reply(new Course.Turn(Course.Kind.CHECK, "lamp", Observations.UNKNOWN))
            .reply(new Course.Turn(Course.Kind.FIX, "words/fix/1", Course.HELPED))
            .reply(new Course.Turn(Course.Kind.FIX, "words/fix/2", Course.NO_HELP));
    assertEquals(List.of("clock/fix/1", "words/fix/2"), course.tried());
    assertEquals(List.of("lamp"), course.unknown());
    assertEquals(List.of("words/fix/1"), course.temporary(forOnce()));
  }
}
