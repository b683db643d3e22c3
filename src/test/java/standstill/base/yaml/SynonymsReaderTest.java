package standstill.base.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.text.Problem;

/** Words that mean the same; invented ones throughout. */
class SynonymsReaderTest {
  private static List<String> firstLines(String text) {
    List<BaseText> files = new ArrayList<>();
    files.add(new BaseText("scale.yaml", "kb/scale.yaml", BaseReaderTest.SCALE));
    files.add(new BaseText("synonyms.yaml", "kb/synonyms.yaml", text));
    return BaseReader.read(files, List.of("x")).problems().stream()
        .map(Problem::toString)
        .map(problem -> problem.lines().findFirst().orElse(""))
        .toList();
  }

  @Test
  void soundGroupsHaveNoProblems() {
    assertEquals(List.of(), firstLines("- words: [lamp, lantern]\n- words: [wick, thread]\n"));
  }

  @Test
  void aGroupOfOneWordIsReportedAtItsPlace() {
    assertEquals(
        List.of("kb/synonyms.yaml:2:10: 'words' has 1 entry"),
        firstLines("- words: [lamp, lantern]\n- words: [wick]\n"));
  }

  @Test
  void aWordInTwoGroupsIsReportedWhereItComesAgain() {
    assertEquals(
        List.of("kb/synonyms.yaml:3:10: 'Lamp' stands in two places"),
        firstLines("- words: [lamp, lantern]\n- words: [wick, thread]\n- words: [glass, Lamp]\n"));
  }

  @Test
  void somethingElseThanAListIsReported() {
    assertEquals(
        List.of("kb/synonyms.yaml:1:1: 'synonyms' is not a list"),
        firstLines("words: [lamp, lantern]\n"));
  }

  @Test
  void anUnknownKeyIsReported() {
    assertEquals(1, firstLines("- words: [lamp, lantern]\n  colour: red\n").size());
    assertEquals(
        "kb/synonyms.yaml:2:3:",
        firstLines("- words: [lamp, lantern]\n  colour: red\n").get(0).substring(0, 21));
  }

  @Test
  void brokenYamlIsReportedAtItsPlace() {
    String problem = firstLines("- words: [lamp, lantern\n- words: [wick]\n").get(0);
    assertEquals("kb/synonyms.yaml:2:", problem.substring(0, 19), problem);
  }
}
