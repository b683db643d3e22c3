package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

/** What the decoder says of a code or a line, for the tests of all its tables. */
final class Readings {
  private Readings() {}

  /** The reading of a code alone that is of this kind. */
  static String alone(Kind kind, String code) {
    return only(kind, code, Decoder.explainCode(code));
  }

  /** The meaning of this kind in a line. */
  static String inLine(Kind kind, String line) {
    List<Meaning> all = Decoder.explain(line);
    for (Meaning m : all) {
      assertTrue(line.substring(m.start(), m.end()).equals(m.code()), m + " is not in its place");
    }
    return only(kind, line, all);
  }

  private static String only(Kind kind, String text, List<Meaning> all) {
    List<Meaning> fitting = all.stream().filter(m -> m.kind() == kind).toList();
    assertFalse(fitting.isEmpty(), "no " + kind + " in: " + text + "; found " + all);
    assertFalse(fitting.get(0).source().isBlank(), "no source: " + text);
    return fitting.get(0).meaning();
  }

  static void says(String expected, String actual) {
    assertTrue(actual.contains(expected), "expected `" + expected + "` in: " + actual);
  }

  static boolean none(Kind kind, List<Meaning> all) {
    return all.stream().noneMatch(m -> m.kind() == kind);
  }
}
