package standstill.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PatternTest {
  @Test
  void namedGroupsAreCaughtInBothSpellings() {
    Pattern pattern = Pattern.known("(?P<what>UUID|LABEL)=(?<id>\\S+) does not exist");
    assertEquals(List.of("what", "id"), pattern.groups());
    assertEquals(
        Map.of("what", "LABEL", "id", "rescue"),
        pattern.find("ALERT! LABEL=rescue does not exist.").orElseThrow().values());
  }

  @Test
  void lookAroundAndBackReferencesAreRefused() {
    // RE2 syntax page (github.com/google/re2/wiki/Syntax) lists both as NOT SUPPORTED; value from
    // memory.
    assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("(?=ab)c"));
    assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("(a)\\1"));
    assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("a(b"));
  }

  @Test
  void troubleIsReportedAtItsPlaceInThePattern() {
    Pattern.SyntaxException e =
        assertThrows(Pattern.SyntaxException.class, () -> Pattern.of("error [z-a] here"));
    assertEquals(7, e.offset());
  }

  @Test
  void aPatternThatBlowsUpBacktrackingEnginesStaysLinear() {
    // The textbook case (a?)^n a^n of Cox, "Regular Expression Matching Can Be Simple And Fast"
    // (2007), n = 60.
    Pattern pattern = Pattern.known("(?:a?){60}a{60}end");
    assertFalse(pattern.foundIn("a".repeat(60) + "e"));
    assertTrue(pattern.foundIn("a".repeat(60) + "end"));
  }

  @ParameterizedTest
  @CsvSource({
    "'Failed to mount (?P<what>\\S+)',                'Failed to mount '",
    "'(?:no such device|unknown filesystem): x',      'no such device: x|unknown filesystem: x'",
    "'a.*Kernel panic',                               'Kernel panic'",
    "'(?:ab)?Kernel',                                 'abKernel|Kernel'",
    "'(?:ab)*Kernel',                                 'Kernel'",
    "'x+yes',                                         'yes'",
    "'(?:foo){2}',                                    'foo'",
    "'abc\\.def',                                     'abc.def'",
    "'dev sd[a-z]+, sector',                          ', sector'",
    "'[ab]cde',                                       'acde|bcde'",
  })
  void literalsAreOnesThatEveryMatchContains(String source, String literals) {
    assertEquals(List.of(literals.split("\\|")), Pattern.known(source).literals());
  }

  @ParameterizedTest
  @CsvSource({"'(?i)error'", "'\\d+'", "'a|bcd'", "'.*'", "'[a-z]+'", "'(?:abc|\\d)'"})
  void noLiteralIsClaimedWhereNoneIsCertain(String source) {
    assertEquals(List.of(), Pattern.known(source).literals());
  }

  @Test
  void thePrefilterPassesEveryPatternThatMatches() {
    List<Pattern> patterns =
        List.of(
            Pattern.known("unknown filesystem"),
            Pattern.known("\\d+ errors?"),
            Pattern.known("no such (?:device|partition)"),
            Pattern.known("abc"));
    Prefilter filter = new Prefilter(patterns);
    assertEquals(List.of(0), asList(filter.candidates("error: unknown filesystem.")));
    assertEquals(List.of(1, 2), asList(filter.candidates("3 errors: no such partition.")));
    assertEquals(List.of(), asList(filter.candidates("ab")));
  }

  private static List<Integer> asList(int[] numbers) {
    return java.util.Arrays.stream(numbers).boxed().toList();
  }
}
