package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.base.Stage;

/** Invented lines throughout. */
class MinerTest {
  private static final int FAR = 500;

  private final Miner miner = new Miner();
  private int line;

  private void add(String log, String message, boolean grave, int after) {
    miner.add(new Stray(log, ++line, message, Stage.DEVICES, grave, after));
  }

  private List<String> templates(int least, List<List<String>> healthy) {
    return miner.candidates(least, healthy).stream().map(Candidate::template).toList();
  }

  @Test
  void linesThatDifferInValuesAreOneCandidate() {
    add("a.log", "lantern-dock 0000:03:00.0: no answer within 5 s", true, 2);
    add("a.log", "lantern-dock 0000:03:00.0: no answer within 10 s", true, 1);
    add("b.log", "lantern-dock 0000:41:00.1: no answer within 5 s", true, 0);
    Candidate only = miner.candidates(1, List.of()).get(0);
    assertEquals("lantern-dock <*>: no answer within <*> s", only.template());
    assertEquals(3, only.times());
    assertEquals(2, only.logs());
    assertEquals(Stage.DEVICES, only.stage());
    assertEquals(
        "lantern-dock (?P<address>[0-9a-f:.]+): no answer within (?P<seconds>\\d+) s",
        only.proposal().pattern().source());
    assertEquals(1, only.examples().get(0).line());
  }

  @Test
  void wordsInWhichTheLinesDifferBecomeAGroup() {
    add("a.log", "the bench lamp on shelf four is dark tonight and cold", false, FAR);
    add("b.log", "the bench lamp on shelf nine is dark tonight and cold", false, FAR);
    Candidate only = miner.candidates(1, List.of()).get(0);
    assertEquals(
        "the bench lamp on shelf (?P<what>\\S+) is dark tonight and cold",
        only.proposal().pattern().source());
    only.examples()
        .forEach(stray -> assertTrue(only.proposal().pattern().foundIn(stray.message())));
    assertEquals(2, only.kept());
  }

  @Test
  void differentErrorNumbersAreDifferentCandidates() {
    add("a.log", "lantern dock 3 did not come up, error -110", true, FAR);
    add("a.log", "lantern dock 3 did not come up, error -71", true, FAR);
    assertEquals(2, miner.candidates(1, List.of()).size());
  }

  @Test
  void manyLogsFailureAndTheEndOfTheBootComeFirst() {
    add("a.log", "early calm alpha", false, FAR);
    add("a.log", "late calm beta", false, 3);
    add("a.log", "early failure gamma", true, FAR);
    add("a.log", "late failure delta", true, 3);
    add("a.log", "nearer calm epsilon", false, 1);
    assertEquals(
        List.of(
            "late failure delta",
            "early failure gamma",
            "nearer calm epsilon",
            "late calm beta",
            "early calm alpha"),
        templates(1, List.of()));
    for (String log : List.of("b", "c", "d", "e", "f", "g", "h")) {
      add(log, "early calm alpha", false, FAR);
    }
    assertEquals("early calm alpha", templates(1, List.of()).get(0), "eight logs outweigh six");
    assertEquals(List.of("early calm alpha"), templates(2, List.of()));
  }

  @Test
  void whatHealthyBootsPrintComesLast() {
    add("a.log", "lantern lamp 7 failed to glow", true, 0);
    add("a.log", "quiet remark", false, FAR);
    List<List<String>> healthy =
        List.of(List.of("lantern lamp 12 failed to glow"), List.of("all is well"));
    List<Candidate> found = miner.candidates(1, healthy);
    assertEquals("quiet remark", found.get(0).template());
    assertFalse(found.get(0).isHealthy());
    assertEquals(1, found.get(1).healthy());
  }

  @Test
  void theBodyOfACrashReportComesAfterEveryRemark() {
    for (String log : List.of("a", "b", "c")) {
      add(log, "lantern_probe+0x12/0x40 [lantern]", true, 0);
      add(log, "Call Trace:", true, 0);
    }
    add("a", "a remark", false, FAR);
    assertEquals("a remark", templates(1, List.of()).get(0));
  }

  @Test
  void linesWithoutWordsAreNoCandidates() {
    add("a.log", "12 34 0x56", true, 0);
    add("a.log", "   ", true, 0);
    assertEquals(List.of(), miner.candidates(1, List.of()));
  }
}
