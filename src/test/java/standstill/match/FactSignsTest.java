package standstill.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.FactLine;
import standstill.base.Facts;
import standstill.base.Family;
import standstill.base.SignForm;
import standstill.base.Statement;
import standstill.base.TestBase;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.text.Pattern;
import standstill.trace.Tracer;

/** Signs that ask for a statement. The lines and their meaning are invented. */
class FactSignsTest {
  private static final Family FAMILY =
      TestBase.family(
          List.of(),
          new Facts(
              List.of(
                  new FactLine(
                      "lamp-array",
                      Pattern.known("lamps (?P<name>\\w+): one is dark"),
                      Optional.empty(),
                      Optional.empty(),
                      Optional.of(ThingSort.ARRAY),
                      Optional.empty(),
                      ThingState.INCOMPLETE,
                      "{name}",
                      "",
                      java.util.Map.of(),
                      "",
                      List.of())),
              List.of(),
              List.of()));

  private static Matches matches(Statement statement, String... messages) {
    Base base =
        new TestBase()
            .fault("wick", 1)
            .sign(new SignForm.OfFact(statement), 0.9, 0.01, "wick", "array {array} is short")
            .add()
            .build();
    List<LogLine> lines =
        IntStream.range(0, messages.length)
            .mapToObj(
                i ->
                    new LogLine(
                        i + 1,
                        i + 1,
                        messages[i],
                        messages[i],
                        OptionalDouble.empty(),
                        OptionalInt.empty(),
                        ""))
            .toList();
    Boot boot = new Boot(1, lines);
    return new SignMatcher(base, FAMILY).match(boot, new Tracer(FAMILY).trace(boot));
  }

  @Test
  void aFactIsSeenOnItsLinesAndFillsTheSentence() {
    Matches found = matches(Statement.ARRAY_MEMBER_MISSING, "a", "lamps gallery: one is dark");
    assertEquals(1, found.signs().size());
    assertEquals(List.of(2), found.signs().get(0).hits().stream().map(Hit::line).toList());
    assertEquals("array gallery is short", found.signs().get(0).sentence());
    assertTrue(found.untold().isEmpty());
    assertTrue(found.machine().isPresent());
  }

  @Test
  void whatThePasteCannotTellIsNamedAsUntold() {
    Matches found = matches(Statement.NO_DISK_AT_ALL, "a");
    assertTrue(found.signs().isEmpty());
    assertEquals(java.util.Set.of("wick/1"), found.untold());
  }
}
