package standstill.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExpansionTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ' ',
      value = {
        "abc 0",
        "x{0,60} 59",
        "x{3} 2",
        "x{3,} 2",
        "(ab){0,10} 18",
        "((x{0,9}){0,9}){0,9} 728",
        "[a-z{0,9}]{4} 3",
        "[]a]{4} 3",
        "[^]{9}]{4} 3",
        "[[:alpha:]{9}]{4} 3",
        "\\p{Greek}{5} 4",
        "\\x{10FFFF}{5} 4",
        "\\{9} 0",
        "(?i)(?P<name>ab){5} 8",
        "a{,9} 0",
        "a{b} 0",
        "[\\]{9}]{2} 1",
      })
  void repetitionsAreWrittenOut(String source, int added) throws Exception {
    assertEquals(added, Expansion.repeated(source, 1_000, 1_000_000));
  }

  /** The engine's own program has one or two instructions for each part. */
  @ParameterizedTest
  @ValueSource(strings = {"x{0,60}y", "(?P<a>ab{2,9}){0,20}", "[a-f]{8}(?:-[a-f]{4}){3}"})
  void itIsAboutWhatTheEngineMakes(String source) throws Exception {
    int engine = com.google.re2j.Pattern.compile(source).programSize();
    int counted = Expansion.repeated(source, 1_000, 1_000_000);
    assertTrue(counted <= engine && engine <= 3 * counted + 20, counted + " of " + engine);
  }

  @Test
  void aPatternThatRepeatsTooMuchIsRefusedAtThePlace() {
    Pattern.SyntaxException many =
        assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("panic: x{0,999}"));
    assertEquals("repeats a part 999 times; at most 250 are allowed", many.getMessage());
    assertEquals(8, many.offset());
    Pattern.SyntaxException nested =
        assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("((x{0,250}){0,250}){0,250}"));
    assertEquals("repetitions add 62499 parts; at most 500 are allowed", nested.getMessage());
    assertEquals(11, nested.offset());
    assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("\\pL{0,200}".repeat(20)));
  }
}
