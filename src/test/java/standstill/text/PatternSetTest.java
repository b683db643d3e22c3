package standstill.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PatternSetTest {
  private static final PatternSet SET =
      new PatternSet(
          List.of(
              Pattern.known("Timed out waiting for device (?P<dev>\\S+)"),
              Pattern.known("Failed to \\w+ [A-Z]"),
              Pattern.known("kernel panic")));

  private static List<Integer> found(String text, boolean typed) {
    List<Integer> places = new ArrayList<>();
    SET.candidates(
        text,
        typed,
        (pattern, place) -> {
          if (pattern.foundIn(text)) {
            places.add(place);
          }
        });
    return places;
  }

  @Test
  void aTypedLineWithoutCapitalsIsReadBlindToCase() {
    assertEquals(List.of(0), found("timed out waiting for device dev-sda3.device", true));
    assertEquals(List.of(1), found("failed to start networking", true));
  }

  @Test
  void elsewhereCaseTellsTextsApart() {
    assertEquals(List.of(), found("timed out waiting for device dev-sda3.device", false));
    assertEquals(List.of(), found("TIMED out waiting for device dev-sda3.device", true));
    assertEquals(List.of(2), found("kernel panic - not syncing: VFS", true));
  }

  @Test
  void allPatternsAreNeverFewerThanTheCandidates() {
    List<Integer> all = new ArrayList<>();
    SET.all(
        "timed out waiting for device x",
        true,
        (pattern, place) -> {
          if (pattern.foundIn("timed out waiting for device x")) {
            all.add(place);
          }
        });
    assertEquals(found("timed out waiting for device x", true), all);
  }
}
