package standstill.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Risk;
import standstill.base.TestBase;
import standstill.rank.Observations;

/** An invented disk: its data is to be rescued before it is repaired, though that cures nothing. */
class ForcedOrderTest {
  private static final String RESCUE = "disk/fix/1";
  private static final String REPAIR = "disk/fix/2";

  private static Base base() {
    return new TestBase()
        .fault("disk", 1)
        .fix("rescue the data", 30, 0.0001, Risk.NONE)
        .fix("repair the disk", 5, 0.95, Risk.DATA)
        .after(1)
        .add()
        .build();
  }

  private static Step next(Observations said, Limits limits) {
    Guide guide = new Guide(base());
    return guide.guide(guide.withoutLog(), said, limits).step();
  }

  private static String fix(Step step) {
    return assertInstanceOf(Step.Repair.class, step).fix().id();
  }

  @Test
  void whatHasToComeFirstIsProposedInPlaceOfTheRepairThatPays() {
    assertEquals(RESCUE, fix(next(Observations.NONE, Limits.none(true))));
    assertEquals(REPAIR, fix(next(Observations.NONE.didNotHelp(RESCUE), Limits.none(true))));
  }

  @Test
  void theRepairIsNotProposedToWhoSkipsWhatComesFirst() {
    assertInstanceOf(
        Step.HandOver.class, next(Observations.NONE, new Limits(Set.of(), Set.of(RESCUE), true)));
  }
}
