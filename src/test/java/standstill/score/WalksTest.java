package standstill.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.store.BaseFolder;

/** Simulated people, drawn from the base that the program carries; the people are invented. */
class WalksTest {
  private static final int PEOPLE = 60;
  private static Base base;
  private static List<Walks.Measure> measures;

  @BeforeAll
  static void walk() throws IOException {
    base = BaseFolder.builtIn().base();
    measures = new Walks(base, "linux").measure(7, PEOPLE, done -> {});
  }

  @Test
  void sameSeedDrawsTheSamePeople() {
    Walks walks = new Walks(base, "linux");
    List<Walks.Measure> once = walks.measure(3, 5, done -> {});
    assertEquals(once, walks.measure(3, 5, done -> {}));
  }

  @Test
  void guideTakesLessTimeThanThePlainWays() {
    for (Walks.Start start : Walks.Start.values()) {
      double ratio = Walks.ratio(measures, start);
      // The target over many people is 0.7; so few scatter.
      assertTrue(ratio < 0.85, start + ", seed 7: " + ratio);
    }
  }

  @Test
  void guideSeldomRisksAnythingForNothing() {
    for (Walks.Measure each : measures) {
      if (each.way() == Walks.Way.GUIDE) {
        assertTrue(each.needless() < 0.05, each.toString());
      }
    }
  }

  @Test
  void everybodyIsCounted() {
    assertEquals(Walks.Start.values().length * Walks.Way.values().length, measures.size());
    for (Walks.Measure each : measures) {
      assertEquals(PEOPLE, each.people());
      assertTrue(each.minutes90() >= 0 && each.cured() >= 0 && each.cured() <= 1);
    }
  }
}
