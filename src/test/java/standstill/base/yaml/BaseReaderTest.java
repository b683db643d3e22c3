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
import standstill.text.Problem;

/** Invented entries throughout. */
class BaseReaderTest {
  static final String SCALE =
      """
      chances: {never: 0.001, rarely: 0.02, sometimes: 0.1, often: 0.4, usually: 0.7}
      frequencies: {often: 6, rarely: 1}
      parts: {disk: Disk}
      needs: {network: a network connection}
      risk-minutes: {none: 0, restart: 1, settings: 4, data: 60, firmware: 90, hands-inside: 30}
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
        - line: 'lamp (?P<name>\\S+) is dark'
          shows: usually
          elsewhere: never
          says: 'lamp {name} is dark'
          seen: ['lamp a1 is dark']
          unlike: ['lamp a1 is lit']
      fixes:
        - title: Change the lamp
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

  private static Loaded load(String name, String text) {
    List<BaseText> files = new ArrayList<>();
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
            "kb/faults/kernel/lamp-broken.yaml:10:11: 'line' is empty",
            "kb/faults/kernel/lamp-broken.yaml:13:11: 'says' is empty"),
        firstLines(loaded));
  }

  @Test
  void aMisspeltKeyIsReportedWithItsNearest() {
    Loaded loaded = load(FAULT.replace("prevent:", "prevnt:"));
    assertEquals(
        List.of(
            "kb/faults/kernel/lamp-broken.yaml:1:1: key 'prevent' is missing in a fault",
            "kb/faults/kernel/lamp-broken.yaml:25:1: unknown key 'prevnt' in a fault"),
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
    assertEquals(10, problem.position().line());
    assertEquals("  - line: 'lamp (?P<name>\\S+) is [".length() + 1, problem.position().column());
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
    assertTrue(load("a: " + "[".repeat(5_000) + "]".repeat(5_000)).hasErrors());
    assertTrue(load("a: " + "{b: ".repeat(5_000)).hasErrors());
    assertTrue(load(FAULT.replace("An invented fault.", "x".repeat(9_000))).hasErrors());
    assertTrue(load("#" + "x".repeat(300_000)).hasErrors());
    StringBuilder laughs = new StringBuilder("a0: &a0 [x]\n");
    for (int i = 1; i < 30; i++) {
      laughs.append("a").append(i).append(": &a").append(i);
      laughs.append(" [").append(("*a" + (i - 1) + ",").repeat(9)).append("]\n");
    }
    assertTrue(load(laughs.toString()).hasErrors());
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
