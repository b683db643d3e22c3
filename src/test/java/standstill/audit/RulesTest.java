package standstill.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.audit.SmallBase.sign;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The rules that take a few lines each. */
class RulesTest {
  private static final String LAMP =
      sign("lamp \\S+ is dark", "usually", "rarely", "lamp a is dark");
  private static final String WICK = sign("wick \\S+ is wet", "usually", "never", "wick b is wet");
  private static final String HEALTHY =
      "[    0.000000] Linux version 6.1.0 (bench@lantern) #1 SMP\n[    1.000000] %s\n";

  @Test
  void aCheckWithTheSameAnswersForEveryCauseTellsNothing() throws Exception {
    String alike =
        "told-apart-by: [{check: is-it, answers: {yes-it-is: often, no-it-is-not: often}}]\n";
    SmallBase base =
        new SmallBase()
            .check("is-it")
            .fault("one-thing", "often", alike, LAMP, WICK)
            .fault("other-thing", "often", alike, LAMP, WICK);
    assertEquals(
        List.of("kb/checks/is-it.yaml:1:5: check 'is-it' tells nothing apart"),
        base.problems(new ChecksTellApart()));
    base.fault("third-thing", "often", alike.replaceFirst("often", "never"), LAMP, WICK);
    assertEquals(List.of(), base.problems(new ChecksTellApart()));
  }

  @Test
  void aCheckThatNoFaultAsksAndASymptomThatNoFaultShowsAreUnused() throws Exception {
    SmallBase base =
        new SmallBase()
            .check("is-it")
            .symptoms(
                "- {id: dark, title: Dark, stages: [kernel], look: Dark., reviewed: {on: 2026-11-01, by: ada}}\n"
                    + "- {id: loud, title: Loud, stages: [kernel], look: Loud., reviewed: {on: 2026-11-01, by: ada}}\n")
            .fault("one-thing", "often", "", LAMP, WICK);
    assertEquals(
        List.of(
            "kb/checks/is-it.yaml:1:5: no fault asks the check 'is-it'",
            "kb/symptoms.yaml:2:3: no fault shows the symptom 'loud'"),
        base.problems(new NothingUnused()));
  }

  @Test
  void aSymptomIsOfferedWhereItsFaultsStop() throws Exception {
    SmallBase base =
        new SmallBase()
            .symptoms(
                "- {id: dark, title: Dark, stages: [root], look: Dark., reviewed: {on: 2026-11-01, by: ada}}\n")
            .fault("one-thing", "often", "", LAMP, WICK);
    assertEquals(
        List.of(
            "kb/symptoms.yaml:1:3: symptom 'dark' is offered where none of its faults stops boots"),
        base.problems(new ReachableSymptoms()));
    base.fault("other-thing", "often", "stops-in: [kernel, root]\n", LAMP, WICK);
    assertEquals(List.of(), base.problems(new ReachableSymptoms()));
  }

  private static String again(String sign) {
    return sign.replace("{id: ", "{id: again-");
  }

  @Test
  void theSameSignTwiceIsFoundAndAnotherFormOfItIsNot() throws Exception {
    SmallBase twice = new SmallBase().fault("one-thing", "often", "", LAMP, WICK, again(LAMP));
    assertEquals(
        List.of("kb/faults/kernel/one-thing.yaml:12:5: sign stands in this fault a second time"),
        twice.problems(new SameSignTwice()));
    String atEnd = again(LAMP).replace("shows", "at-end: 3, shows");
    assertEquals(
        List.of(),
        new SmallBase().fault("one-thing", "often", "", LAMP, atEnd).problems(new SameSignTwice()));
  }

  @Test
  void aPatternThatMissesItsTextOrMatchesItsNearMissIsFound() throws Exception {
    String misses = sign("lamp \\d is dark", "usually", "never", "lamp a is dark");
    String matches = WICK.replace("nothing of it", "the wick c is wet");
    assertEquals(
        List.of(
            "kb/faults/kernel/one-thing.yaml:10:5: pattern does not match its seen text: lamp a is dark",
            "kb/faults/kernel/one-thing.yaml:11:5: pattern matches its unlike text: the wick c is wet"),
        new SmallBase().fault("one-thing", "often", "", misses, matches).problems(new SignTexts()));
  }

  @Test
  void aTrailMustNotCallHarmlessWhatAFaultCallsDecisive() throws Exception {
    String line = "{id: wick-is, line: 'wick \\S+ is', seen: ['wick z is wet'], unlike: ['none']}";
    SmallBase base =
        new SmallBase().fault("one-thing", "often", "", WICK, LAMP).trail("damp", line);
    assertEquals(
        List.of(
            "kb/faults/kernel/one-thing.yaml:10:5: warning: sign says 'never' for elsewhere, and the"
                + " false trail 'damp' calls its line harmless"),
        base.problems(new TrailsAndSigns()));
    String often = line.replace("wick", "lamp");
    assertEquals(
        List.of(),
        new SmallBase()
            .fault("one-thing", "often", "", WICK, LAMP)
            .trail("damp", often)
            .problems(new TrailsAndSigns()),
        "'rarely' admits that healthy machines print it");
  }

  @Test
  void anEntryWhoseWordingEndedSaysSo() throws Exception {
    String old = "until: {program: lamp, version: '2.9'}, shows";
    SmallBase silent = new SmallBase().fault("one-thing", "often", "", WICK.replace("shows", old));
    assertEquals(
        List.of(
            "kb/faults/kernel/one-thing.yaml:1:5: none of its wordings is printed any more, and its"
                + " text does not say so"),
        silent.problems(new EndedWordings()));
    assertEquals(
        List.of(),
        new SmallBase()
            .fault("one-thing", "often", "", WICK.replace("shows", old), LAMP)
            .problems(new EndedWordings()),
        "one wording is still printed");
    String trail =
        "{id: bell, line: 'bell rings', seen: ['bell rings'], unlike: ['none'],"
            + " until: {program: bell, version: '%s'}}";
    SmallBase trails =
        new SmallBase()
            .fault("one-thing", "often", "", WICK)
            .trail("old-bell", trail.formatted("1.0"));
    assertEquals(1, trails.problems(new EndedWordings()).size());
  }

  @Test
  void aNameForAValueIsCaughtAndUsed() throws Exception {
    SmallBase base = new SmallBase().fault("one-thing", "often", "values: {lamp: LAMP}\n", WICK);
    assertEquals(
        List.of("kb/faults/kernel/one-thing.yaml:1:5: warning: value 'lamp' stands in no step"),
        base.problems(new CaughtValues()));
  }

  @Test
  void aLabelNamesFaultsThatAreThere() throws Exception {
    SmallBase base =
        new SmallBase()
            .fault("one-thing", "often", "aliases: [old-name]\n", LAMP, WICK)
            .boot("healthy", "x")
            .boot("old-name", "x")
            .boot("one-thing", "x", "no-such-fault");
    assertEquals(
        List.of("kb/boots/boot-2.yaml: unknown fault: 'no-such-fault'"),
        base.problems(new KnownLabels()));
  }

  @Test
  void aSignInMoreHealthyBootsThanItsWordAllowsIsFound() throws Exception {
    SmallBase base = new SmallBase().fault("one-thing", "often", "", WICK, LAMP);
    for (int i = 0; i < 10; i++) {
      base.boot("healthy", String.format(HEALTHY, i == 0 ? "wick b is wet" : "all is well"));
    }
    base.boot("healthy", String.format(HEALTHY, "lamp a is dark"));
    base.boot("one-thing", String.format(HEALTHY, "lamp a is dark"));
    assertEquals(
        List.of(
            "kb/faults/kernel/one-thing.yaml:10:5: warning: sign stands in 1 of 11 healthy boots, and"
                + " says 'never' for elsewhere"),
        base.problems(new HealthyBoots()),
        "one boot in eleven is no surprise for 'rarely', and its own boot does not count");
  }

  @Test
  void theTailOfTheBinomialDistributionIsExact() {
    // Counted: of 1024 outcomes of ten fair coins, 45 + 10 + 1 have eight heads or more.
    assertEquals(56 / 1024.0, HealthyBoots.atLeast(8, 10, 0.5), 1e-12);
    assertEquals(1, HealthyBoots.atLeast(0, 10, 0.5), 1e-12);
    assertEquals(1 - Math.pow(0.98, 14), HealthyBoots.atLeast(1, 14, 0.02), 1e-12);
  }

  @Test
  void anEntryIsAskedForAgainAfterAYear() throws Exception {
    SmallBase base =
        new SmallBase()
            .reviewed("2025-11-26")
            .fault("a-year-ago", "often", "", LAMP, WICK)
            .reviewed("2025-11-25")
            .fault("a-day-more", "often", "", LAMP, WICK)
            .check("old-check")
            .trail(
                "old-trail",
                "{id: bell-rings, line: 'bell rings', seen: ['bell rings'], unlike: ['none']}")
            .reviewed("2026-11-27")
            .fault("ahead-by-a-time-zone", "often", "", LAMP, WICK)
            .reviewed("2027-01-01")
            .fault("still-to-come", "often", "", LAMP, WICK);
    List<String> problems = base.problems(new Reviews());
    assertEquals(
        List.of(
            "kb/faults/kernel/a-day-more.yaml:1:5: warning: fault 'a-day-more' was last reviewed on"
                + " 2025-11-25",
            "kb/faults/kernel/still-to-come.yaml:1:5: warning: fault 'still-to-come' was reviewed on"
                + " 2027-01-01, which is still to come",
            "kb/checks/old-check.yaml:1:5: warning: check 'old-check' was last reviewed on 2025-11-25",
            "kb/trails/old-trail.yaml:1:5: warning: false trail 'old-trail' was last reviewed on"
                + " 2025-11-25"),
        problems);
    assertTrue(
        base.symptoms(
                "- {id: dark, title: Dark, stages: [kernel], look: Dark., reviewed: {on: 2024-02-29, by: ada}}\n")
            .problems(new Reviews())
            .get(3)
            .startsWith("kb/symptoms.yaml:1:3: warning: symptom 'dark' was last reviewed"),
        problems.toString());
  }
}
