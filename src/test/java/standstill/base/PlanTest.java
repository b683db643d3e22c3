package standstill.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Invented lamps, with a shape and a fuel. */
class PlanTest {
  private static final Circumstance.Case ROUND = lamp("round", "shape");
  private static final Circumstance.Case SQUARE = lamp("square", "shape");
  private static final Circumstance.Case OIL = lamp("oil", "fuel");
  private static final Circumstance.Case GAS = lamp("gas", "fuel");

  private static Circumstance.Case lamp(String word, String kind) {
    return new Circumstance.Case(word, word, kind, List.of());
  }

  private static FixStep.Terms on(Circumstance.Case... cases) {
    return new FixStep.Terms(List.of(cases), Optional.empty(), "", "", "");
  }

  private static FixStep doing(String text, Circumstance.Case... cases) {
    return new FixStep.Doing(text, on(cases));
  }

  private static Fix fix(FixStep... steps) {
    return new Fix(
        "lamp/fix/light-it",
        "Light it",
        List.of(steps),
        5,
        new Chance("often", 0.4),
        Risk.NONE,
        List.of(),
        "Light.",
        "Dark.",
        List.of(),
        new Fix.Scope(true, Optional.empty(), List.of(), Span.ALWAYS, Map.of("wick", "WICK")));
  }

  private static List<String> shown(List<Plan.Row> rows) {
    return rows.stream().map(r -> r.number() + " " + r.line()).toList();
  }

  private static Given known(String kind, String... words) {
    return new Given(Map.of(kind, Set.of(words)), Map.of());
  }

  @Test
  void variantsStandSideBySideUntilOneIsKnown() {
    Fix fix =
        fix(
            FixStep.of("open"),
            doing("twist", ROUND),
            new FixStep.Group("", "", List.of(FixStep.of("lift"), FixStep.of("pull")), on(SQUARE)),
            FixStep.of("close"));
    assertEquals(
        List.of("1 open", "2 round: twist", "2 square: lift", "3 square: pull", "4 close"),
        shown(Plan.of(fix, Given.NOTHING).rows()));
    Plan round = Plan.of(fix, known("shape", "round"));
    assertEquals(List.of("1 open", "2 round: twist", "3 close"), shown(round.rows()));
    assertEquals(List.of("1 square: lift", "2 square: pull"), shown(round.others()));
    assertTrue(round.rows().get(1).told());
    assertFalse(Plan.of(fix, Given.NOTHING).rows().get(1).told());
    Plan either = Plan.of(fix, known("shape", "round", "square"));
    assertEquals(5, either.rows().size());
    assertFalse(either.rows().get(1).told());
  }

  @Test
  void casesOfOneCircumstanceAreAlternativesAndOfSeveralAreAllNeeded() {
    Fix fix = fix(doing("pour", ROUND, OIL, GAS));
    assertEquals("round / oil or gas: pour", Plan.of(fix, Given.NOTHING).texts().get(0));
    assertEquals(1, Plan.of(fix, known("fuel", "gas")).rows().size());
    assertEquals(0, Plan.of(fix, known("shape", "square")).rows().size());
    assertFalse(Plan.of(fix, known("fuel", "gas")).rows().get(0).told());
    Given both = new Given(Map.of("fuel", Set.of("gas"), "shape", Set.of("round")), Map.of());
    assertTrue(Plan.of(fix, both).rows().get(0).told());
  }

  @Test
  void aBlockUsedForSomeShowsNoVariantForOthers() {
    FixStep block =
        new FixStep.Group(
            "Light the lamp",
            "light",
            List.of(doing("twist", ROUND), doing("lift", SQUARE, OIL), FixStep.of("see")),
            on(SQUARE));
    Plan plan = Plan.of(fix(block), Given.NOTHING);
    assertEquals(List.of("1 square / oil: lift", "2 square: see"), shown(plan.rows()));
    assertEquals(List.of(), plan.others());
  }

  @Test
  void aBlockGivesItsTitleAndCareToTheFirstStepThatFits() {
    FixStep.Terms care =
        new FixStep.Terms(
            List.of(), Optional.of(Risk.DATA), "It burns {wick}.", "Blow.", "Save the oil.");
    Fix fix =
        fix(
            new FixStep.Group(
                "Light the lamp",
                "light",
                List.of(doing("twist", ROUND), doing("lift", SQUARE)),
                care));
    Plan.Row row = Plan.of(fix, known("shape", "square")).rows().get(0);
    assertEquals("Light the lamp", row.heading());
    assertEquals("lift", row.text());
    assertEquals(Optional.of(Risk.DATA), row.risk());
    assertEquals("It burns WICK.", row.caution());
    assertEquals("Blow.", row.undo());
    assertEquals("Save the oil.", row.saveFirst());
  }

  @Test
  void aDeclaredNameTakesTheValueOfTheLogAndNothingElse() {
    Fix fix = fix(FixStep.of("cut {wick} with {knife}"));
    assertEquals(List.of("cut WICK with {knife}"), fix.texts());
    Given given = Given.NOTHING.with(Map.of("wick", "w7", "knife", "rm"));
    assertEquals(List.of("cut w7 with {knife}"), Plan.of(fix, given).texts());
  }
}
