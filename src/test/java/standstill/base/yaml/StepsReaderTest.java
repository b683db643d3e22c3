package standstill.base.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import standstill.base.Condition;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Plan;
import standstill.base.Risk;

/** Steps with more to them than a text, as they are read. All entries are invented. */
class StepsReaderTest {
  private static final String CIRCUMSTANCES =
      """
      - id: shape
        title: Shape of the lamp
        cases:
          - {id: round, title: Round lamps, tells: [{line: 'lamp is round', seen: ['lamp is round']}]}
          - {id: square, title: Square lamps}
      """;
  private static final String BLOCK =
      """
      id: open-the-lamp
      title: Open the lamp
      about: An invented block.
      parameters: {lid: {means: which lid, unknown: LID}}
      risk: settings
      steps:
        - {do: 'twist {lid}', for: [round]}
        - {do: 'lift {lid}', for: [square], undo: 'Put {lid} back.'}
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2026-11-25, by: base-team}
      """;
  private static final String STEPS = "steps: [Change it.]";

  private static Loaded load(String fault, String... blocks) {
    List<BaseText> files = new ArrayList<>();
    files.add(new BaseText("scale.yaml", "kb/scale.yaml", BaseReaderTest.SCALE));
    files.add(new BaseText("families/linux.yaml", "kb/families/linux.yaml", BaseReaderTest.FAMILY));
    files.add(new BaseText("symptoms.yaml", "kb/symptoms.yaml", BaseReaderTest.SYMPTOMS));
    files.add(new BaseText("circumstances.yaml", "kb/circumstances.yaml", CIRCUMSTANCES));
    for (String block : blocks) {
      String id = block.substring(4, block.indexOf('\n'));
      files.add(new BaseText("steps/" + id + ".yaml", "kb/steps/" + id + ".yaml", block));
    }
    files.add(
        new BaseText("faults/kernel/lamp-broken.yaml", "kb/faults/kernel/lamp-broken.yaml", fault));
    return BaseReader.read(files, List.of("x"));
  }

  private static Loaded loadSteps(String steps, String... blocks) {
    return load(BaseReaderTest.FAULT.replace(STEPS, "steps: " + steps), blocks);
  }

  private static List<String> messages(Loaded loaded) {
    return loaded.problems().stream().map(p -> p.message()).toList();
  }

  private static Fix fix(Loaded loaded) {
    assertEquals(List.of(), loaded.problems());
    return loaded.base().faults().get(0).fixes().get(0);
  }

  @Test
  void aBlockComesWithItsParametersAndForTheRightLamp() {
    Loaded loaded =
        loadSteps("[Look., {use: open-the-lamp, with: {lid: 'the red lid'}}, Close.]", BLOCK);
    assertEquals(
        List.of(
            "Look.", "Round lamps: twist the red lid", "Square lamps: lift the red lid", "Close."),
        fix(loaded).texts());
    Given square = Given.NOTHING.saying(loaded.base(), List.of("square"));
    Plan plan = Plan.of(fix(loaded), square);
    assertEquals(3, plan.rows().size());
    assertEquals("Put the red lid back.", plan.rows().get(1).undo());
    assertEquals(
        List.of("Round lamps: twist LID", "Square lamps: lift LID"),
        fix(loadSteps("[{use: open-the-lamp}]", BLOCK)).texts());
  }

  @Test
  void aValueOfTheLogGoesThroughABlock() {
    Fix fix =
        fix(
            load(
                BaseReaderTest.FAULT.replace(
                        STEPS, "steps: [{use: open-the-lamp, with: {lid: '{name}'}}]")
                    + "values: {name: NAME}\n",
                BLOCK));
    assertEquals("Round lamps: twist NAME", fix.texts().get(0));
    assertEquals(
        "Round lamps: twist a1",
        Plan.of(fix, Given.NOTHING.with(java.util.Map.of("name", "a1"))).texts().get(0));
  }

  @Test
  void whatAStepNamesHasToBeThere() {
    assertEquals(
        List.of("unknown block of steps 'open-lamp'"),
        messages(loadSteps("[{use: open-lamp}]", BLOCK)));
    assertEquals(
        List.of("block 'open-the-lamp' has no parameter 'led'"),
        messages(loadSteps("[{use: open-the-lamp, with: {led: x}}]", BLOCK)));
    assertEquals(
        List.of("unknown word 'rond' in for"), messages(loadSteps("[{do: x, for: [rond]}]")));
    assertEquals(List.of("'{name}' stands for nothing"), messages(loadSteps("['cut {name}']")));
    assertEquals(
        List.of("a step has none of the keys of which it needs one"),
        messages(loadSteps("[{for: [round]}]")));
    assertEquals(
        List.of("a step has 'do' and 'steps'"), messages(loadSteps("[{do: x, steps: [y]}]")));
    assertEquals(List.of("values without a block"), messages(loadSteps("[{do: x, with: {a: b}}]")));
  }

  @Test
  void aBlockCannotUseItselfAndAnErrorInItIsReportedOnce() {
    String self = BLOCK.replace("- {do: 'twist {lid}', for: [round]}", "- {use: open-the-lamp}");
    assertEquals(List.of("block uses itself"), messages(loadSteps("[Look.]", self)));
    String round = BLOCK.replace("id: open-the-lamp", "id: open-it").replace("'twist {lid}'", "x");
    String a = round.replace("- {do: x, for: [round]}", "- {use: open-the-lamp}");
    String b = BLOCK.replace("- {do: 'twist {lid}', for: [round]}", "- {use: open-it}");
    assertEquals(List.of("block uses itself"), messages(loadSteps("[{use: open-it}]", a, b)));
    String broken = BLOCK.replace("[square]", "[cube]");
    assertEquals(
        List.of("unknown word 'cube' in for"),
        messages(loadSteps("[{use: open-the-lamp}]", broken)));
  }

  @Test
  void aStepIsNoRiskierThanItsRepairSays() {
    assertEquals(
        List.of("a step puts more at risk than the fix says: data"),
        messages(loadSteps("[{do: x, risk: data}]")));
    Loaded loaded =
        load(
            BaseReaderTest.FAULT
                .replace(STEPS, "steps: [{do: x, risk: data, save-first: Make a backup of it.}]")
                .replace("risk: none", "risk: data"));
    assertTrue(fix(loaded).isGrave());
    Plan.Row row = Plan.of(fix(loaded), Given.NOTHING).rows().get(0);
    assertEquals(Optional.of(Risk.DATA), row.risk());
    assertEquals("Make a backup of it.", row.saveFirst());
  }

  @Test
  void whoMayBeLockedOutIsToldTheOtherWayIn() {
    String fault = BaseReaderTest.FAULT.replace("risk: none", "risk: locks-out");
    assertEquals(
        List.of("fix that can lock out has no caution about another way in"),
        messages(load(fault)));
    assertEquals(
        Risk.LOCKS_OUT,
        fix(load(fault.replace("cautions: []", "cautions: [Have the recovery key at hand.]")))
            .risk());
  }

  @Test
  void aFixSaysHowLongItHoldsAndWhatItDependsOn() {
    Fix fix =
        fix(
            load(
                BaseReaderTest.FAULT.replace(
                    STEPS,
                    STEPS
                        + "\n    lasts: one-boot\n    when: [round, not lamp-lit]\n"
                        + "    since: {program: lamp, version: '2.10'}")));
    assertFalse(fix.scope().lasting());
    assertEquals(
        List.of(new Condition("round", true), new Condition("lamp-lit", false)),
        fix.scope().when());
    assertEquals("since lamp 2.10", fix.scope().span().words());
    assertTrue(fix(load(BaseReaderTest.FAULT)).scope().lasting());
  }

  @Test
  void versionsThatEndBeforeTheyBeginAreAnError() {
    assertEquals(
        List.of("it ends before it begins"),
        messages(
            load(
                BaseReaderTest.FAULT.replace(
                    "    says:",
                    "    since: {program: lamp, version: '2.10'}\n"
                        + "    until: {program: lamp, version: '2.9'}\n    says:"))));
  }

  @Test
  void theOrderOfRepairsIsForcedAsAWholeOrOneByOne() {
    String more =
        """
          - {id: buy-another, title: Buy another, steps: [Buy.], minutes: 5, cures: often, risk: none, prove: x, undo: y,
             cautions: []%s}
        prevent:""";
    String two = BaseReaderTest.FAULT.replace("prevent:", more.formatted(""));
    assertEquals(Optional.of("lamp-broken/fix/change-the-lamp"), second(two + "order: forced\n"));
    assertEquals(Optional.empty(), second(two));
    String first =
        BaseReaderTest.FAULT.replace("prevent:", more.formatted(", first: change-the-lamp"));
    assertEquals(Optional.of("lamp-broken/fix/change-the-lamp"), second(first));
    assertEquals(
        List.of("'change-lamp' is no fix of this fault"),
        messages(load(first.replace("first: change-the-lamp", "first: change-lamp"))));
    assertEquals(
        List.of("the fixes wait for each other"),
        messages(load(first.replace(STEPS, STEPS + "\n    first: buy-another"))));
  }

  private static Optional<String> second(String fault) {
    Loaded loaded = load(fault);
    assertEquals(List.of(), loaded.problems());
    return loaded.base().faults().get(0).fixes().get(1).scope().first();
  }

  @Test
  void aWordStandsForOneCaseOnly() {
    Sink sink =
        new Sink(
            new BaseText(
                "circumstances.yaml", "c", CIRCUMSTANCES.replace("id: square", "id: round")));
    SmallReaders.circumstances(sink);
    assertEquals("second case 'round'", sink.problems().get(0).message());
  }
}
