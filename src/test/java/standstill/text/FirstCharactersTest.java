package standstill.text;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A shortcut may cost time, never an answer: what can begin a match is never ruled out. */
class FirstCharactersTest {
  private static void canBegin(String pattern, String yes, String no) {
    Pattern compiled = Pattern.known(pattern);
    for (char c : yes.toCharArray()) {
      assertTrue(compiled.mayBeginWith(c), pattern + " with " + c);
    }
    for (char c : no.toCharArray()) {
      assertFalse(compiled.mayBeginWith(c), pattern + " with " + c);
    }
  }

  @Test
  void beginningsAreToldApart() {
    canBegin("\\s*\\[ *(?P<seconds>\\d+)\\]", " [", "0a<");
    canBegin("(?:kern|user) {0,8}:", "ku", "x[ ");
    canBegin("[^\\s:]{1,3}x", "ab\u00e9", " :");
    canBegin("\\pL{3}", "azA\u00e4", "0[");
    canBegin("x?y|[0-3]", "xy03", "4z");
  }

  @Test
  void whatIsNotUnderstoodMayBeginWithAnything() {
    canBegin("(?i)abc", "aAx[", "");
    canBegin("[[:alpha:]]x", "a0", "");
    canBegin("a*", "abc", "");
  }

  @Test
  void noMatchIsEverRuledOut() {
    long seed = 20_261_125;
    Random random = new Random(seed);
    List<String> atoms =
        List.of(
            "a", "[ab]", "[^a]", "\\d", "\\s", ".", "(?:a|b)", "\\[", "x*", "(?P<n>c?)", "^", "-");
    String alphabet = "ab c0[x-\u00e9";
    for (int i = 0; i < 3_000; i++) {
      StringBuilder source = new StringBuilder();
      for (int k = random.nextInt(4); k >= 0; k--) {
        String atom = atoms.get(random.nextInt(atoms.size()));
        source.append(source.indexOf("(?P") >= 0 && atom.startsWith("(?P") ? "c" : atom);
        source.append(
            random.nextInt(5) == 0 && !atom.equals("^") && !atom.endsWith("*") ? "?" : "");
      }
      Pattern pattern = Pattern.known(source.toString());
      StringBuilder text = new StringBuilder();
      for (int k = random.nextInt(5); k >= 0; k--) {
        text.append(alphabet.charAt(random.nextInt(alphabet.length())));
      }
      if (pattern.findAtStart(text).isPresent()) {
        assertTrue(
            pattern.mayBeginWith(text.charAt(0)), "seed " + seed + ": " + source + " on " + text);
      }
    }
  }
}
