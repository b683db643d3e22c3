package standstill.base.yaml;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import standstill.base.Fault;
import standstill.base.Rate;
import standstill.text.Problem;

/** Invented entries throughout. */
class BaseReaderTest {
  static final String SCALE =
      """
      chances: {never: 0.001, rarely: 0.02, sometimes: 0.1, often: 0.4, usually: 0.7}
      frequencies: {often: 6, rarely: 1}
      parts: {disk: Disk}
      needs: {network: a network connection}
      risk-minutes: {locks-out: 60, none: 0, restart: 1, settings: 4, data: 60, firmware: 90, hands-inside: 30}
      need-minutes: 5
      model: {x: 1}
      """;
  static final String FAMILY =
      """
      id: linux
      title: Linux
      recognise: [{line: 'Linux version', seen: ['Linux version 6']}]
      begins: [{line: 'Linux version', seen: ['Linux version 6']}]
      ramdisk: [{line: 'initrd', seen: ['initrd']}]
      line-forms: [{id: ring, prefix: '\\[[0-9.]+\\] ', seen: ['[1.0] x']}]
      milestones:
        - {id: starts, stage: kernel, proves: begins, title: Kernel starts, line: 'Linux version', seen: ['Linux version 6']}
      """;
  static final String SYMPTOMS =
      """
      - {id: text-stops, title: Text stops, stages: [kernel], look: The text stops., words: [hang], reviewed: {on: 2026-11-25, by: base-team}}
      """;
  static final String FAULT =
      """
      id: lamp-broken
      title: The lamp is broken
      family: [linux]
      stage: kernel
      part: disk
      how-common: often
      about: An invented fault.
      symptoms: [text-stops]
      signs:
        - id: lamp-is-dark
          line: 'lamp (?P<name>\\S+) is dark'
          shows: usually
          elsewhere: never
          says: 'lamp {name} is dark'
          seen: ['lamp a1 is dark']
          unlike: ['lamp a1 is lit']
      fixes:
        - id: change-the-lamp
          title: Change the lamp
          steps: [Change it.]
          minutes: 5
          cures: usually
          risk: none
          prove: The lamp is lit.
          undo: Put the old one back.
          cautions: []
      prevent: Keep a spare one.
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2026-11-25, by: base-team}
      """;

  private static Loaded load(String fault) {
    return load("faults/kernel/lamp-broken.yaml", fault);
  }

  /** The sound base with one more file. */
  private static Loaded loadWith(String name, String text) {
    return loadWith(
        "faults/kernel/lamp-broken.yaml", FAULT, List.of(new BaseText(name, "kb/" + name, text)));
  }

  private static Loaded load(String name, String text) {
    return loadWith(name, text, List.of());
  }

  private static Loaded loadWith(String name, String text, List<BaseText> more) {
    List<BaseText> files = new ArrayList<>(more);
    files.add(new BaseText("scale.yaml", "kb/scale.yaml", SCALE));
    files.add(new BaseText("families/linux.yaml", "kb/families/linux.yaml", FAMILY));
    files.add(new BaseText("symptoms.yaml", "kb/symptoms.yaml", SYMPTOMS));
    files.add(new BaseText(name, "kb/" + name, text));
    return BaseReader.read(files, List.of("x"));
  }

  private static List<String> firstLines(Loaded loaded) {
    return loaded.problems().stream()
        .map(p -> p.toString().lines().findFirst().orElse(""))
        .toList();
  }

  private static final String PART =
      """
      id: lamp
      title: Lamps
      recognise: [{line: 'lamp is lit', seen: ['lamp is lit']}]
      begins: [{line: '^lamp', seen: ['lamp is lit']}]
      line-forms: [{id: lamp-stamp, prefix: '<[0-9]+> ', seen: ['<1> x']}]
      milestones:
        - {id: lit, stage: firmware, proves: begins, title: Lit, line: 'lamp is lit', seen: ['lamp is lit']}
      """;

  private static Loaded loadFamilies(String linux, String part, String fault) {
    return BaseReader.read(
        List.of(
            new BaseText("scale.yaml", "kb/scale.yaml", SCALE),
            new BaseText("families/lamp.yaml", "kb/families/lamp.yaml", part),
            new BaseText("families/linux.yaml", "kb/families/linux.yaml", linux),
            new BaseText("symptoms.yaml", "kb/symptoms.yaml", SYMPTOMS),
            new BaseText(
                "faults/kernel/lamp-broken.yaml", "kb/faults/kernel/lamp-broken.yaml", fault)),
        List.of("x"));
  }

  @Test
  void aFamilyHasThePartsAndFaultsOfThoseThatItIncludes() {
    Loaded loaded =
        loadFamilies(
            FAMILY + "include: [lamp]\n", PART, FAULT.replace("family: [linux]", "family: [lamp]"));
    assertEquals(List.of(), loaded.problems());
    var linux = loaded.base().family("linux").orElseThrow();
    assertEquals(List.of("lamp"), linux.include());
    assertEquals(
        List.of("lamp-stamp", "ring"), linux.lineForms().stream().map(f -> f.id()).toList());
    assertEquals(List.of("lit", "starts"), linux.milestones().stream().map(m -> m.id()).toList());
    assertEquals(1, linux.recognise().size(), "what recognises a part doesn't recognise the whole");
    assertEquals(2, linux.begins().size());
    assertEquals(1, loaded.base().faultsOf("linux").size());
    assertEquals(1, loaded.base().faultsOf("lamp").size());
    assertEquals(List.of(), loaded.base().faultsOf("no-such-family"));
  }

  @Test
  void aFaultOfAFamilyIsNoneOfThePartsThatItIncludes() {
    Loaded loaded = loadFamilies(FAMILY + "include: [lamp]\n", PART, FAULT);
    assertEquals(List.of(), loaded.base().faultsOf("lamp"));
    assertTrue(loaded.base().canMeet(List.of("linux"), List.of("lamp")));
  }

  @Test
  void anUnknownFamilyInIncludeIsReportedAtItsPlace() {
    Loaded loaded = loadFamilies(FAMILY + "include: [lamb]\n", PART, FAULT);
    assertEquals(
        List.of("kb/families/linux.yaml:9:11: unknown family in include: 'lamb'"),
        firstLines(loaded));
    assertTrue(loaded.problems().get(0).toString().contains("did you mean 'lamp'?"));
  }

  @Test
  void familiesThatIncludeEachOtherInACircleAreReportedOnce() {
    Loaded loaded = loadFamilies(FAMILY + "include: [lamp]\n", PART + "include: [linux]\n", FAULT);
    assertEquals(
        List.of(
            "kb/families/linux.yaml:9:11: families include each other in a circle:"
                + " lamp > linux > lamp"),
        firstLines(loaded));
  }

  @Test
  void aMilestoneIsDefinedOnceOverAFamilyAndItsParts() {
    Loaded loaded =
        loadFamilies(FAMILY + "include: [lamp]\n", PART.replace("id: lit", "id: starts"), FAULT);
    assertEquals(
        List.of("kb/families/linux.yaml:8:10: second milestone with the id 'starts'"),
        firstLines(loaded));
  }

  @Test
  void aSoundBaseLoadsWithoutProblems() {
    Loaded loaded = load(FAULT);
    assertEquals(List.of(), loaded.problems());
    assertEquals("lamp-broken", loaded.base().faults().get(0).id());
    assertEquals(0.7, loaded.base().faults().get(0).signs().get(0).shows().value());
  }

  @Test
  void aBrokenEntryIsReportedOnceAndNotWhereOthersNameIt() {
    List<BaseText> files = new ArrayList<>();
    files.add(new BaseText("scale.yaml", "kb/scale.yaml", SCALE));
    files.add(new BaseText("families/linux.yaml", "kb/families/linux.yaml", FAMILY));
    files.add(new BaseText("symptoms.yaml", "kb/symptoms.yaml", SYMPTOMS + "- {id: x}\n"));
    files.add(
        new BaseText(
            "faults/kernel/lamp-broken.yaml",
            "kb/faults/kernel/lamp-broken.yaml",
            FAULT.replace("how-common: often", "how-common: ofen")));
    files.add(
        new BaseText(
            "faults/kernel/lamp-cold.yaml",
            "kb/faults/kernel/lamp-cold.yaml",
            FAULT.replace("id: lamp-broken", "id: lamp-cold")
                + "leads-to: [lamp-broken, lamp-lost]\n"));
    List<String> unknown =
        firstLines(BaseReader.read(files, List.of("x"))).stream()
            .filter(line -> line.contains("unknown"))
            .toList();
    assertEquals(2, unknown.size(), unknown.toString());
    assertTrue(unknown.get(0).contains("'ofen'"), unknown.get(0));
    assertTrue(unknown.get(1).endsWith("unknown fault in leads-to: 'lamp-lost'"), unknown.get(1));
  }

  @Test
  void anUnknownWordIsReportedWithPlaceExcerptAndNearestWord() {
    Loaded loaded = load(FAULT.replace("how-common: often", "how-common: ofen"));
    assertEquals(
        """
        kb/faults/kernel/lamp-broken.yaml:6:13: unknown word 'ofen' for how-common
            how-common: ofen
                        ^
          allowed: often, rarely; did you mean 'often'?""",
        loaded.problems().get(0).toString());
  }

  @Test
  void aBlankIsReportedAtItsPlace() {
    Loaded loaded =
        load(
            FAULT
                .replace("how-common: often", "how-common: ''")
                .replaceFirst("line: '.*'", "line: ''")
                .replaceFirst("says: '.*'", "says: ''"));
    assertEquals(
        List.of(
            "kb/faults/kernel/lamp-broken.yaml:6:13: 'how-common' is empty",
            "kb/faults/kernel/lamp-broken.yaml:11:11: 'line' is empty",
            "kb/faults/kernel/lamp-broken.yaml:14:11: 'says' is empty"),
        firstLines(loaded));
  }

  @Test
  void aSignAndAFixAreNamedByTheirIdsWhateverTheirOrder() {
    Fault fault = load(FAULT).base().faults().get(0);
    assertEquals("lamp-broken/lamp-is-dark", fault.signs().get(0).id());
    assertEquals("lamp-broken/fix/change-the-lamp", fault.fixes().get(0).id());
  }

  @Test
  void anIdStandsOnceInAnEntryAndIsNeverLeftOut() {
    assertEquals(
        List.of(
            "kb/faults/kernel/lamp-broken.yaml:18:9: second sign or fix with the id 'lamp-is-dark'"
                + " in this entry"),
        firstLines(load(FAULT.replace("id: change-the-lamp", "id: lamp-is-dark"))));
    assertEquals(
        List.of("kb/faults/kernel/lamp-broken.yaml:18:5: key 'id' is missing in a fix"),
        firstLines(load(FAULT.replace("id: change-the-lamp\n    title", "title"))));
  }

  @Test
  void aRetiredIdLeadsToItsSuccessorOverSeveralSteps() {
    String retired = "retired: {'1': screw-it-in, screw-it-in: change-the-lamp}\n";
    Loaded loaded = load(FAULT + retired + "aliases: [lamp-dead]\n");
    assertEquals(List.of(), loaded.problems());
    for (String id : List.of("lamp-broken/fix/1", "lamp-dead/fix/screw-it-in")) {
      assertEquals("lamp-broken/fix/change-the-lamp", loaded.base().fix(id).orElseThrow().id(), id);
    }
    assertTrue(loaded.base().fix("lamp-broken/fix/2").isEmpty());
    assertTrue(loaded.base().fix("lamp-broken").isEmpty());
  }

  @Test
  void aRetiredIdInUseOrWithoutSuccessorIsReported() {
    assertEquals(
        List.of(
            "kb/faults/kernel/lamp-broken.yaml:30:28: retired id 'change-the-lamp' is in use",
            "kb/faults/kernel/lamp-broken.yaml:30:47: 'old' leads to no sign or fix of this fault:"
                + " 'gone'"),
        firstLines(load(FAULT + "retired: {change-the-lamp: lamp-is-dark, old: gone}\n")));
  }

  @Test
  void theListOfRetiredFixesLeadsFromOneFaultToAnother() {
    Loaded loaded =
        loadWith("retired.yaml", "- {was: torch/fix/1, now: lamp-broken/fix/change-the-lamp}\n");
    assertEquals(List.of(), loaded.problems());
    assertEquals("Change the lamp", loaded.base().fix("torch/fix/1").orElseThrow().title());
    assertEquals(
        List.of("kb/retired.yaml: 'torch/fix/1' leads to no fix: 'lamp-broken/fix/change-lamp'"),
        firstLines(
            loadWith("retired.yaml", "- {was: torch/fix/1, now: lamp-broken/fix/change-lamp}\n")));
    assertEquals(
        List.of("kb/retired.yaml:1:9: 'torch/1' is not the name of a fix"),
        firstLines(
            loadWith("retired.yaml", "- {was: torch/1, now: lamp-broken/fix/change-the-lamp}\n")));
  }

  @Test
  void aRetiredSignHandsItsMeasuredRateOn() {
    String rate = "boots: 9\nsigns: [{fault: lamp-broken, sign: %s, seen: 2, of: 9}]\n";
    for (String id : List.of("lamp-is-dark", "dark-lamp")) {
      List<BaseText> more =
          List.of(new BaseText("rates.yaml", "kb/rates.yaml", rate.formatted(id)));
      Loaded loaded =
          loadWith(
              "faults/kernel/lamp-broken.yaml",
              FAULT + "retired: {dark-lamp: lamp-is-dark}\n",
              more);
      assertEquals(List.of(), loaded.problems());
      assertEquals(new Rate(2, 9, 0, 0), loaded.base().rates().get("lamp-broken/lamp-is-dark"), id);
    }
  }

  @Test
  void aMisspeltKeyIsReportedWithItsNearest() {
    Loaded loaded = load(FAULT.replace("prevent:", "prevnt:"));
    assertEquals(
        List.of(
            "kb/faults/kernel/lamp-broken.yaml:1:1: key 'prevent' is missing in a fault",
            "kb/faults/kernel/lamp-broken.yaml:27:1: unknown key 'prevnt' in a fault"),
        firstLines(loaded));
    assertTrue(loaded.problems().get(1).advice().endsWith("did you mean 'prevent'?"));
  }

  @Test
  void allErrorsComeInOneRun() {
    Loaded loaded =
        load(
            FAULT
                .replace("how-common: often", "how-common: daily")
                .replace("minutes: 5", "minutes: five")
                .replace("shows: usually", "shows: mostly")
                .replace("symptoms: [text-stops]", "symptoms: [text-stop]"));
    assertEquals(3, loaded.problems().size(), loaded.problems().toString());
  }

  @Test
  void aCrossReferenceToNothingIsAnError() {
    Loaded loaded = load(FAULT.replace("symptoms: [text-stops]", "symptoms: [text-stop]"));
    assertEquals(
        List.of("kb/faults/kernel/lamp-broken.yaml:8:12: unknown symptom: 'text-stop'"),
        firstLines(loaded));
  }

  @Test
  void aPatternWithTroubleIsReportedAtItsColumn() {
    Loaded loaded = load(FAULT.replace("is dark'\n", "is [z-a]'\n"));
    Problem problem = loaded.problems().get(0);
    assertEquals(11, problem.position().line());
    assertEquals("    line: 'lamp (?P<name>\\S+) is [".length() + 1, problem.position().column());
  }

  @Test
  void aGroupThatThePatternLacksIsReported() {
    Loaded loaded = load(FAULT.replace("lamp {name} is dark", "lamp {nam} is dark"));
    assertTrue(firstLines(loaded).get(0).contains("'{nam}' is no group of the pattern"));
  }

  @Test
  void aRiskyFixNeedsItsCaution() {
    assertTrue(
        firstLines(load(FAULT.replace("risk: none", "risk: data"))).get(0).contains("backup"));
    assertTrue(
        firstLines(load(FAULT.replace("risk: none", "risk: firmware"))).get(0).contains("power"));
    assertTrue(
        firstLines(load(FAULT.replace("risk: none", "risk: hands-inside")))
            .get(0)
            .contains("static"));
  }

  @Test
  void anEntryWithoutSourceIsAnError() {
    Loaded loaded =
        load(FAULT.replace("sources: [{title: 'common practice, no source'}]", "sources: []"));
    assertTrue(firstLines(loaded).get(0).contains("'sources' is empty"));
  }

  @Test
  void anIdThatIsNotTheFileNameIsAnError() {
    Loaded loaded = load("faults/kernel/other.yaml", FAULT);
    assertTrue(firstLines(loaded).get(0).contains("id 'lamp-broken' is not the file's name"));
  }

  @Test
  void aGeneralFaultMustNotClaimAnythingDecisive() {
    Loaded loaded = load(FAULT.replace("stage: kernel", "stage: kernel\nkind: general"));
    assertTrue(firstLines(loaded).get(0).contains("general fault"), firstLines(loaded).toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: &x [1,2]\nb: *x\n",
        "a: !!java.io.File [/etc/passwd]\n",
        "a: !custom x\n",
        "a: 1\na: 2\n",
        "? [a, b]\n: c\n",
        "a: [1, 2\n",
        "\ta: 1\n",
        "--- a\n--- b\n",
        "a: \u0007\n",
        "",
        "- just\n- a list\n",
        "plain",
      })
  @Timeout(10)
  void hostileOrBrokenYamlIsRefusedWithAPlace(String text) {
    Loaded loaded = load(text);
    assertTrue(loaded.hasErrors());
    assertTrue(loaded.problems().get(0).position().file().endsWith("lamp-broken.yaml"));
    assertEquals(List.of(), loaded.base().faults());
  }

  @Test
  @Timeout(10)
  void deepNestingHugeScalarsAndHugeFilesAreRefused() {
    assertEquals(
        "kb/faults/kernel/lamp-broken.yaml:1:15: nested too deeply",
        firstLines(load("a: " + "[".repeat(5_000) + "]".repeat(5_000))).get(0));
    assertEquals(
        "kb/faults/kernel/lamp-broken.yaml:1:48: nested too deeply",
        firstLines(load("a: " + "{b: ".repeat(5_000))).get(0));
    assertTrue(load(FAULT.replace("An invented fault.", "x".repeat(9_000))).hasErrors());
    assertTrue(load("#" + "x".repeat(300_000)).hasErrors());
    StringBuilder laughs = new StringBuilder("a0: &a0 [x]\n");
    for (int i = 1; i < 30; i++) {
      laughs.append("a").append(i).append(": &a").append(i);
      laughs.append(" [").append(("*a" + (i - 1) + ",").repeat(9)).append("]\n");
    }
    assertEquals(
        "kb/faults/kernel/lamp-broken.yaml:1:5: anchor 'a0'",
        firstLines(load(laughs.toString())).get(0));
    assertEquals(
        "kb/faults/kernel/lamp-broken.yaml:2:4: alias 'a0'",
        firstLines(load("b: 1\na: *a0\n")).get(0));
  }

  @Test
  void aByteThatIsNotUtf8IsReportedAtItsPlace() {
    byte[] latin = FAULT.replace("invented", "erf\u00fcndet").getBytes(ISO_8859_1);
    BaseText file = BaseText.of("faults/kernel/lamp-broken.yaml", "kb/lamp-broken.yaml", latin);
    Sink sink = new Sink(file);
    assertEquals(Optional.empty(), new Nodes(sink).compose());
    assertEquals(
        """
        kb/lamp-broken.yaml:7:14: byte 0xFC is not UTF-8
            about: An erf\ufffdndet fault.
                         ^
          save the file as UTF-8""",
        sink.problems().get(0).toString());
  }

  @Test
  void everythingThatUtf8CanSayIsReadAsItIs() {
    String all = "caf\u00e9 \uD83D\uDD26 \uFFFD end";
    assertEquals(all, BaseText.of("x.yaml", "x.yaml", all.getBytes(UTF_8)).text());
    byte[] cut = {'a', (byte) 0xF0, (byte) 0x9F};
    assertEquals("a\uDCF0\uDC9F", BaseText.of("x.yaml", "x.yaml", cut).text());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "family: [linus]; 10",
        "leads-to: [lamp-brken]; 12",
        "symptoms: [text-stop]; 12",
        "told-apart-by: [{check: no-such-check, answers: {a: often}}]; 25",
      })
  void aReferenceThatLeadsNowhereIsAnErrorWhereItStands(String broken, int column) {
    String key = broken.substring(0, broken.indexOf(':'));
    String kept = FAULT.replaceAll("(?m)^" + key + ":.*\n", "");
    Loaded loaded = load(kept + broken + "\n");
    assertEquals(1, loaded.problems().size(), loaded.problems().toString());
    long line = kept.lines().count() + 1;
    String first = firstLines(loaded).get(0);
    assertTrue(
        first.startsWith("kb/faults/kernel/lamp-broken.yaml:" + line + ":" + column + ": unknown "),
        first);
  }

  @Test
  void aNumberWhereATextBelongsIsAnErrorAndTheOtherWayRound() {
    assertTrue(
        firstLines(load(FAULT.replace("An invented fault.", "42")))
            .get(0)
            .endsWith("7:8: 'about' is not a text"));
    assertTrue(
        firstLines(load(FAULT.replace("minutes: 5", "minutes: '5'")))
            .get(0)
            .contains("'minutes' is not a whole number from 1 to 2000"));
  }

  @Test
  void aMissingScaleIsSaid() {
    Loaded loaded = BaseReader.read(List.of(), List.of());
    assertEquals("scale.yaml: file is missing", firstLines(loaded).get(0));
  }

  @Test
  void editsBetweenWordsFollowLevenshtein() {
    // Levenshtein's distance; kitten/sitting = 3 is the example of every textbook (value from
    // memory).
    assertEquals(3, Words.distance("kitten", "sitting"));
    assertEquals(2, Words.distance("flaw", "lawn"));
    assertEquals(0, Words.distance("same", "same"));
  }

  @Test
  void aWaitingLineMustSayForWhat() {
    String waiting = "waiting: [{line: 'waits (?P<what>.*)', seen: ['waits x']}]\n";
    String toy = FAMILY.replace("id: linux", "id: toy");
    List<String> wrong = firstLines(load("families/toy.yaml", toy + waiting));
    assertEquals(1, wrong.size(), wrong.toString());
    assertTrue(wrong.get(0).endsWith(": no group 'job'"), wrong.get(0));
    String right = waiting.replace("what", "job");
    assertEquals(List.of(), firstLines(load("families/toy.yaml", toy + right)));
  }
}
