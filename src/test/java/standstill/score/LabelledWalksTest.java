package standstill.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.base.Label;
import standstill.base.Stage;
import standstill.store.BaseFolder;
import standstill.text.Position;

/** People at a boot of the examples; the people are invented. */
class LabelledWalksTest {
  private static final int PEOPLE = 12;

  private static List<LabelledWalks.Measure> measure(String fault, long seed) throws IOException {
    byte[] log = Files.readAllBytes(Path.of("docs/examples/wrong-root-id.log"));
    Label label =
        new Label(
            "example",
            "example.log",
            fault,
            List.of(),
            List.of(),
            Stage.ROOT,
            Set.of(),
            List.of(),
            "whole",
            "by hand",
            "none",
            Position.ofFile("test"));
    return new LabelledWalks(BaseFolder.builtIn().base())
        .measure(
            List.of(new Source("example", List.of(new LabelledLog(label, log)))),
            seed,
            PEOPLE,
            done -> {});
  }

  @Test
  void theWalkStandsBesideTheListForTheSamePeople() throws IOException {
    List<LabelledWalks.Measure> measures = measure("root-id-on-no-disk", 3);
    assertEquals(2, measures.size());
    for (LabelledWalks.Measure each : measures) {
      assertEquals(PEOPLE, each.people());
      assertTrue(each.cured() > 0 && each.riskyInVain() <= each.risky(), each.toString());
      assertEquals(
          each.minutes() + Walks.NOT_CURED * (PEOPLE - each.cured()) / PEOPLE,
          each.charged(),
          Walks.NOT_CURED / PEOPLE);
    }
    assertTrue(measures.get(0).guided());
    assertEquals(0, measures.get(0).falseEndings());
    assertEquals(measures, measure("root-id-on-no-disk", 3));
  }

  @Test
  void aBootWithoutAFaultOfTheBaseHasNobody() throws IOException {
    assertEquals(0, measure(Label.UNLISTED, 3).get(0).people());
  }
}
