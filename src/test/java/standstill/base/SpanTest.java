package standstill.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpanTest {
  private static Span.Release linux(String version) {
    return new Span.Release("linux", version);
  }

  @Test
  void versionsAreComparedNumberByNumber() {
    assertTrue(linux("6.12").isAfter(linux("6.9")));
    assertTrue(linux("6.9.1").isAfter(linux("6.9")));
    assertFalse(linux("6.9.0").isAfter(linux("6.9")));
    assertFalse(linux("5.19").isAfter(linux("6.0")));
  }

  @Test
  void aSpanSaysWhereItBeginsAndEnds() {
    assertEquals("", Span.ALWAYS.words());
    assertEquals("since linux 6.9", new Span(Optional.of(linux("6.9")), Optional.empty()).words());
    assertEquals(
        "since linux 6.9, until linux 6.12",
        new Span(Optional.of(linux("6.9")), Optional.of(linux("6.12"))).words());
  }
}
