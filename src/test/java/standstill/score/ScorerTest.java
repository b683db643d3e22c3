package standstill.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import standstill.audit.SmallBase;
import standstill.base.Base;
import standstill.base.Label;
import standstill.base.Stage;
import standstill.text.Position;

/** What counts as right. All entries and texts are invented. */
class ScorerTest {
  private static final String LOG =
      "[    0.000000] Linux version 6.1.0\n[    1.000000] lamp 3: the wick is wet\n";

  private Base base;

  @BeforeEach
  void build() throws IOException {
    base =
        new SmallBase()
            .fault(
                "wet-wick",
                "often",
                "leads-to: [lamp-fails]\n",
                SmallBase.sign("the wick is wet", "usually", "never", "lamp 3: the wick is wet"))
            .fault(
                "lamp-fails",
                "very-often",
                "kind: general\n",
                SmallBase.sign("lamp \\d+:", "nearly-always", "rarely", "lamp 3: dark"))
            .fault(
                "bench-fails",
                "often",
                "kind: general\n",
                SmallBase.sign("bench \\d+:", "nearly-always", "rarely", "bench 3: loose"))
            .load()
            .base();
  }

  private static LabelledLog log(String label, String text, String... general) {
    return new LabelledLog(
        new Label(
            "boot",
            "boot.log",
            label,
            List.of(),
            List.of(general),
            Stage.KERNEL,
            Set.of(),
            List.of(),
            "whole",
            "invented",
            "CC0-1.0",
            Position.ofFile("kb/boots/boot.yaml")),
        text.getBytes(StandardCharsets.UTF_8));
  }

  private boolean rightUnlisted(LabelledLog log) {
    return new Scorer(base, List.of(log)).asIs().unlistedRight() == 1;
  }

  @Test
  void aGeneralCauseIsRightForAnUnlistedOneOnlyWhereTheLabelNamesIt() {
    String dark = LOG.replace("the wick is wet", "dark");
    assertEquals(
        "stalled",
        new Scorer(base, List.of(log("unlisted", dark))).asIs().results().get(0).verdict());
    assertEquals(true, rightUnlisted(log("unlisted", dark, "lamp-fails")));
    assertEquals(false, rightUnlisted(log("unlisted", dark, "bench-fails")));
    assertEquals(false, rightUnlisted(log("unlisted", dark)));
  }

  private Scorer.Hidden hidden(String text, String... general) {
    return new Scorer(base, List.of(log("wet-wick", text, general))).hideEach().get(0);
  }

  @Test
  void aHiddenCauseMayComeOutAsAGeneralOneThatItLeadsTo() {
    Scorer.Hidden hidden = hidden(LOG);
    assertEquals("lamp-fails", hidden.said());
    assertEquals(true, hidden.right());
  }

  @Test
  void aHiddenCauseMayNotComeOutAsJustAnyGeneralOne() {
    String bench = LOG.replace("lamp 3: the wick is wet", "bench 3: the wick is wet");
    assertEquals("bench-fails", hidden(bench).said());
    assertEquals(false, hidden(bench).right());
    assertEquals(true, hidden(bench, "bench-fails").right());
  }
}
