package standstill.match;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.SignForm;
import standstill.base.SignForm.Join;
import standstill.base.TestBase;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.text.Pattern;
import standstill.trace.Tracer;

/** Signs that ask for a line and for another one above or below it. All lines are invented. */
class JoinedSignsTest {
  private static final String LIT = "lamp (?P<lamp>\\d+) lit";
  private static final String OUT = "lamp (?P<lamp>\\d+) out";

  /** Numbers of the lines on which a sign with one demand stands. */
  private static List<Integer> lines(Join.Kind kind, String line, String other, Boot boot) {
    SignForm form =
        new SignForm.OnLine(
            Pattern.known(line), 0, 1, 0, List.of(new Join(kind, Pattern.known(other))));
    Base base = new TestBase().fault("wick", 1).sign(form, 0.9, 0.01, "wick", "").add().build();
    Matches found =
        new SignMatcher(base, base.families().get(0))
            .match(boot, new Tracer(base.families().get(0)).trace(boot));
    return found.signs().stream().flatMap(s -> s.hits().stream()).map(Hit::line).toList();
  }

  private static Boot boot(List<Integer> cuts, String... messages) {
    List<LogLine> lines = new ArrayList<>();
    for (String message : messages) {
      int number = lines.size() + 1;
      lines.add(
          new LogLine(
              number, number, message, message, OptionalDouble.empty(), OptionalInt.empty(), ""));
    }
    return new Boot(1, lines, cuts, false);
  }

  @Test
  void thenNotAsksThatNoLineBelowAnswersWithTheSameValue() {
    Boot boot = boot(List.of(), "lamp 1 lit", "lamp 2 lit", "lamp 1 out", "lamp 3 lit");
    assertEquals(List.of(2, 4), lines(Join.Kind.THEN_NOT, LIT, OUT, boot));
  }

  @Test
  void thenNotSaysNothingWhereLinesBelowWereLeftOut() {
    Boot boot = boot(List.of(2), "lamp 1 lit", "lamp 2 lit");
    assertEquals(List.of(2), lines(Join.Kind.THEN_NOT, LIT, OUT, boot));
  }

  @Test
  void afterAsksForALineAboveWithTheSameValue() {
    Boot boot = boot(List.of(), "lamp 1 out", "lamp 1 lit", "lamp 2 lit", "lamp 2 out");
    assertEquals(List.of(2), lines(Join.Kind.AFTER, LIT, OUT, boot));
  }

  @Test
  void beforeAsksForALineBelowWithTheSameValue() {
    Boot boot = boot(List.of(), "lamp 1 lit", "lamp 2 lit", "lamp 2 out", "lamp 3 lit");
    assertEquals(List.of(2), lines(Join.Kind.BEFORE, LIT, OUT, boot));
  }

  @Test
  void groupsThatOnlyOneOfThePatternsHasNeedNotAgree() {
    Boot boot = boot(List.of(), "lamp 1 lit", "lamp 2 lit", "all out");
    assertEquals(List.of(1, 2), lines(Join.Kind.BEFORE, LIT, "all out", boot));
    assertEquals(List.of(), lines(Join.Kind.AFTER, LIT, "all out", boot));
  }

  @Test
  void aDemandIsMetBeyondTheLinesThatAReportKeeps() {
    String[] messages = new String[300];
    for (int i = 0; i < messages.length - 1; i++) {
      messages[i] = "lamp " + i + " lit";
    }
    messages[messages.length - 1] = "lamp 150 out";
    assertEquals(List.of(151), lines(Join.Kind.BEFORE, LIT, OUT, boot(List.of(), messages)));
  }

  @Test
  void describesItsDemandsInWords() {
    SignForm form =
        new SignForm.OnLine(
            Pattern.known(LIT),
            0,
            1,
            0,
            List.of(new Join(Join.Kind.THEN_NOT, Pattern.known("out"))));
    assertEquals("/" + LIT + "/ and after it no /out/", form.describe());
  }
}
