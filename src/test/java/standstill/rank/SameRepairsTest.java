package standstill.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Risk;
import standstill.base.TestBase;

/** Repairs that are the same to the person who does them, in an invented base. */
class SameRepairsTest {
  private static final Base BASE =
      new TestBase()
          .fault("one", 1)
          .fix("start the older kernel", 5, 0.8, Risk.NONE)
          .fix("start the newer kernel", 5, 0.8, Risk.NONE)
          .add()
          .fault("other", 1)
          .fix("start the older kernel", 5, 0.5, Risk.NONE)
          .add()
          .fault("third", 1)
          .fix("replace the cable", 5, 0.8, Risk.NONE)
          .add()
          .build();

  @Test
  void oneTitleWithOneSetOfStepsIsOneRepair() {
    SameRepairs repairs = new SameRepairs(BASE);
    assertTrue(repairs.same("one/fix/1", "other/fix/1"));
    assertTrue(repairs.same("other/fix/1", "one/fix/1"));
    assertTrue(repairs.isAmong("other/fix/1", Set.of("one/fix/1")));
    assertFalse(repairs.same("one/fix/2", "other/fix/1"));
    assertFalse(repairs.isAmong("third/fix/1", Set.of("one/fix/1", "one/fix/2")));
  }

  @Test
  void aRepairThatFailedIsHeldAgainstAllItsFaults() {
    Beliefs beliefs = new Beliefs(BASE);
    Ranking after =
        beliefs.update(beliefs.prior("linux"), Observations.NONE.didNotHelp("one/fix/1"));
    // 0.2, 0.5 and 1 of a third each.
    assertEquals(0.2 / 1.7, chance(after, "one"), 1e-9);
    assertEquals(0.5 / 1.7, chance(after, "other"), 1e-9);
    assertEquals(1 / 1.7, chance(after, "third"), 1e-9);
  }

  @Test
  void aRepairThatHelpedOnceSpeaksForAllItsFaults() {
    Beliefs beliefs = new Beliefs(BASE);
    Ranking after =
        beliefs.update(beliefs.prior("linux"), Observations.NONE.helpedOnce("one/fix/1"));
    // 0.8, 0.5 and a slip of 0.04 of a third each.
    assertEquals(0.8 / 1.34, chance(after, "one"), 1e-9);
    assertEquals(0.04 / 1.34, chance(after, "third"), 1e-9);
  }

  private static double chance(Ranking ranking, String fault) {
    return ranking.causes().stream()
        .filter(cause -> cause.fault().id().equals(fault))
        .mapToDouble(Cause::probability)
        .sum();
  }
}
