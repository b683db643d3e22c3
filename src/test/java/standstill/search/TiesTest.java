package standstill.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.TestBase;

/** Expected scores are worked by hand from the shares that the class names. */
class TiesTest {
  private final Base base =
      new TestBase()
          .check("lantern-lit", 5, "yes", "no")
          .fault("wick-wet", 4)
          .answer("lantern-lit", "yes", 0.1)
          .answer("lantern-lit", "no", 0.9)
          .add()
          .fault("oil-out", 1)
          .answer("lantern-lit", "no", 0.8)
          .leadsTo("wick-wet")
          .add()
          .build();
  private final List<Entry> entries = Entry.of(base);

  private double[] spread(Map<String, Double> scores) {
    double[] all = new double[entries.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = scores.getOrDefault(entries.get(i).id(), 0.0);
    }
    return new Ties(base, entries).spread(all);
  }

  private double of(String id, double[] scores) {
    for (int i = 0; i < scores.length; i++) {
      if (entries.get(i).id().equals(id)) {
        return scores[i];
      }
    }
    throw new AssertionError(id);
  }

  @Test
  void aCauseGivesToTheCheckThatProvesItAndALittleToItsOrigin() {
    double[] spread = spread(Map.of("wick-wet", 10.0));
    assertEquals(10, of("wick-wet", spread), 1e-9);
    // Two causes ask for the check; the surest answer has 0.9.
    assertEquals(10 * 0.9 / Math.sqrt(2), of("lantern-lit", spread), 1e-9);
    assertEquals(10 * 0.05, of("oil-out", spread), 1e-9);
  }

  @Test
  void whatIsFarBehindGivesLittle() {
    double[] spread = spread(Map.of("wick-wet", 10.0, "oil-out", 5.0));
    // 5 gives as 5 * 5 / 10; of two that give, the weaker one counts 0.3.
    double strong = 10 * 0.9 / Math.sqrt(2);
    double weak = 2.5 * 0.8 / Math.sqrt(2);
    assertEquals(strong + 0.3 * weak, of("lantern-lit", spread), 1e-9);
    assertEquals(10 + 0.05 * 2.5, of("wick-wet", spread), 1e-9);
  }

  @Test
  void nothingFoundStaysNothing() {
    assertArrayEquals(new double[entries.size()], spread(Map.of()));
  }
}
