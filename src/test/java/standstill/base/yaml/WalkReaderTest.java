package standstill.base.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import standstill.base.Walk;

class WalkReaderTest {
  private static final String HEAD =
      """
      id: dark
      title: Dark
      about: It is dark.
      offered-at: {symptoms: [no-picture]}
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2026-11-25, by: base-team}
      steps:
      """;

  private static String problems(String steps) {
    BaseText file = new BaseText("walks/dark.yaml", "kb/walks/dark.yaml", HEAD + steps);
    Sink sink = new Sink(file);
    Optional<Walk> walk = WalkReader.read(file, sink);
    assertEquals(walk.isEmpty(), sink.hasErrors());
    StringBuilder all = new StringBuilder();
    sink.problems().forEach(p -> all.append(p).append('\n'));
    return all.toString();
  }

  private static final String GOOD =
      """
        - id: one
          ask: Is it on?
          answers:
            - {id: a, text: 'Yes', then: two}
            - {id: b, text: 'No', hand-over: Ask somebody.}
        - id: two
          ask: Is it loud?
          answers:
            - {id: a, text: 'Yes', fault: fan}
            - {id: b, text: 'No', fix: fan/fix/1}
      """;

  @Test
  void goodWalkIsRead() {
    assertEquals("", problems(GOOD));
  }

  @Test
  void unknownStepIsReportedAtItsPlace() {
    String problems = problems(GOOD.replace("then: two", "then: too"));
    assertTrue(problems.contains("kb/walks/dark.yaml:11:"), problems);
    assertTrue(problems.contains("unknown step 'too'"), problems);
    assertTrue(problems.contains("did you mean 'two'?"), problems);
  }

  @Test
  void stepThatNothingLeadsToIsReported() {
    String problems = problems(GOOD.replace("then: two", "hand-over: Ask somebody."));
    assertTrue(problems.contains("step 'two' is never reached"), problems);
  }

  @Test
  void circleIsReported() {
    String problems = problems(GOOD.replace("fault: fan", "then: one"));
    assertTrue(problems.contains("answer leads back to 'one'"), problems);
  }

  @Test
  void answerThatLeadsNowhereOrTwiceIsReported() {
    assertTrue(problems(GOOD.replace(", fault: fan", "")).contains("answer has none of the keys"));
    assertTrue(
        problems(GOOD.replace("fault: fan", "fault: fan, then: two"))
            .contains("answer has 'then' and 'fault'"));
  }

  @Test
  void dangerousStepNeedsTheUsualCaution() {
    String problems =
        problems(GOOD.replace("ask: Is it loud?", "ask: Is it loud?\n    risk: hands-inside"));
    assertTrue(problems.contains("lacks the usual caution"), problems);
  }
}
