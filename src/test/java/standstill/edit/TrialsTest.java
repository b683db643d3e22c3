package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.base.Stage;

/** What changes do to labelled boots, and what is wrong with their texts. */
class TrialsTest {
  private static final EntryName BOOT = new EntryName("boots/part-ext4-feature.yaml");

  @TempDir private Path folder;
  private Editing editing;
  private Proposals.Current now;

  @BeforeEach
  void open() throws Exception {
    editing = Editing.open(TeamBase.make(folder).folder(), Clock.systemUTC());
    now = editing.proposals().current(TeamBase.ENTRY);
  }

  @AfterEach
  void close() throws Exception {
    editing.close();
  }

  private Trials.Trial measured(String text) throws Exception {
    return measured(TeamBase.ENTRY, text);
  }

  private Trials.Trial measured(EntryName entry, String text) throws Exception {
    Trials.Trial trial = editing.trials().begin(now.commit(), entry, text);
    for (int i = 0; i < 600 && trial.running(); i++) {
      Thread.sleep(100);
      trial = editing.trials().find(now.commit(), entry, text).orElseThrow();
    }
    return trial;
  }

  @Test
  void aSignThatNoLongerMatchesLosesItsBoot() throws Exception {
    // The boot's cause is known: it was provoked with a wrong UUID (kb/boots).
    String deaf =
        now.text()
            .replaceAll("(?m)^    shows: usually$", "    shows: never")
            .replaceAll("(?m)^    elsewhere: hardly-ever$", "    elsewhere: often");
    Trials.Trial trial = measured(deaf.replaceAll("(?m)^kind: specific$", "kind: general"));
    Effect effect = trial.effect().orElseThrow(() -> new AssertionError(trial.failure()));
    assertEquals(3, effect.boots());
    Effect.Moved moved =
        effect.moved().stream()
            .filter(m -> m.boot().equals("last-initramfs-wrong-uuid"))
            .findFirst()
            .orElseThrow();
    assertTrue(moved.rightAfter() < moved.rightBefore(), moved.toString());
    assertTrue(List.of(Effect.Direction.LOST, Effect.Direction.WORSE).contains(moved.direction()));
    assertTrue(effect.summary().startsWith("Measured on 3 labelled boots"));
  }

  @Test
  void aCommentMovesNothing() throws Exception {
    Effect effect = measured(now.text() + "# looked at\n").effect().orElseThrow();
    assertEquals(List.of(), effect.moved());
    assertEquals(effect.rightBefore(), effect.rightAfter());
  }

  private static BootText boot(String label, String also, String log) {
    return new BootText(
        """
        log: bench-lamp.log
        label: %s
        also: [%s]
        stage: root
        cut: whole
        made: invented
        licence: CC0-1.0
        """
            .formatted(label, also),
        log);
  }

  @Test
  void aNewBootIsMeasuredWithTheOthers() throws Exception {
    EntryName entry = new EntryName("boots/bench-lamp.yaml");
    String log = BootText.of(editing.proposals().current(BOOT).text()).log();
    String right = boot("ext4-feature-unsupported", "", log).joined();
    String wrong = boot("root-argument-missing", "", log).joined();
    for (String text : List.of(right, wrong)) {
      Effect effect = measured(entry, text).effect().orElseThrow();
      assertEquals(4, effect.boots());
      assertEquals(1, effect.added().size());
      Effect.Added added = effect.added().get(0);
      assertEquals("bench-lamp", added.boot());
      assertEquals(text.equals(right), added.right(), added.toString());
      assertEquals(Stage.ROOT, added.stage());
      assertTrue(added.stageRight());
      assertTrue(effect.summary().contains("The new boot bench-lamp"), effect.summary());
    }
  }

  @Test
  void whatIsWrongWithABootIsSaid() throws Exception {
    EntryName entry = new EntryName("boots/bench-lamp.yaml");
    List<String> cases =
        List.of(
            "there is no log",
            boot("healthy", "", " \n").joined(),
            "there is no log",
            boot("healthy", "", "x").label(),
            "unknown fault: 'no-such-fault'",
            boot("healthy", "no-such-fault", "x\n").joined(),
            "is not the log beside this label",
            boot("healthy", "", "x\n").joined().replace("bench-lamp.log", "other.log"),
            "the log of this label is another file",
            boot("healthy", "", "x\n").joined().replace("bench-lamp.log", "bench-lamp.log.gz"),
            "has more than 20000 lines",
            boot("healthy", "", "x\n".repeat(20_001)).joined());
    for (int i = 0; i < cases.size(); i += 2) {
      Checker.Checked checked = editing.checker().check(now.commit(), entry, cases.get(i + 1));
      assertTrue(
          checked.firstError().orElse("").contains(cases.get(i)),
          cases.get(i) + ": " + checked.problems());
      assertTrue(checked.boot().isEmpty());
    }
    assertTrue(
        editing
            .checker()
            .check(now.commit(), entry, boot("unlisted", "", "x\n").joined())
            .problems()
            .isEmpty());
  }

  @Test
  void aTextWithErrorsIsNotMeasured() throws Exception {
    Trials.Trial trial = measured(now.text() + "nonsense: 1\n");
    assertTrue(trial.effect().isEmpty());
    assertTrue(trial.failure().contains("unknown key 'nonsense'"), trial.failure());
  }

  @Test
  void anEntrysOwnErrorsHideWhatFollowsFromThem() throws Exception {
    Checker.Checked checked =
        editing.checker().check(now.commit(), TeamBase.ENTRY, now.text() + "nonsense: 1\n");
    assertEquals(1, checked.problems().size(), checked.problems().toString());
  }

  @Test
  void whatAChangeBreaksElsewhereIsSaid() throws Exception {
    // No other fault of the small base shows this symptom.
    String without = now.text().replace(", worked-before-hardware-change]", "]");
    assertFalse(without.equals(now.text()));
    Checker.Checked checked = editing.checker().check(now.commit(), TeamBase.ENTRY, without);
    assertTrue(
        checked.firstError().orElseThrow().contains("no fault shows the symptom"),
        checked.problems().toString());
  }

  @Test
  void aSignMadeOfALineFailsTheCheckUntilItIsFilledIn() throws Exception {
    String text =
        EntryForm.withSign(now.text(), "wick (?P<n>\\d+) is wet", "wick 7 is wet").orElseThrow();
    List<String> problems =
        editing.checker().check(now.commit(), TeamBase.ENTRY, text).problems().stream()
            .map(p -> p.message())
            .toList();
    assertFalse(problems.isEmpty());
    assertTrue(
        problems.stream()
            .allMatch(p -> p.contains("'id'") || p.contains("unlike") || p.contains("says")),
        problems.toString());
  }
}
