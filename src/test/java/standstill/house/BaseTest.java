package standstill.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import standstill.audit.Audit;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Stage;
import standstill.base.yaml.Loaded;
import standstill.store.BaseFolder;
import standstill.text.Problem;

/** The base that is shipped: every claim of every entry is executed. */
class BaseTest {
  private static final Loaded LOADED = load();

  private static Loaded load() {
    try {
      return BaseFolder.read(Path.of("kb"));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void theBaseLoadsWithoutProblems() {
    assertEquals(List.of(), LOADED.problems());
  }

  @TestFactory
  Stream<DynamicTest> everyFaultKeepsWhatItClaims() {
    List<Problem> problems = Audit.problems(LOADED.base());
    return LOADED.base().faults().stream()
        .map(
            fault ->
                DynamicTest.dynamicTest(
                    fault.id(),
                    () ->
                        assertEquals(
                            List.of(),
                            problems.stream()
                                .filter(p -> p.position().file().equals(fault.where().file()))
                                .toList())));
  }

  @Test
  void nothingElseInTheBaseBreaksARule() {
    assertEquals(List.of(), Audit.problems(LOADED.base()));
  }

  @Test
  void everyStageHasItsFaults() {
    Base base = LOADED.base();
    assertTrue(base.faults().size() >= 180, base.faults().size() + " faults");
    assertTrue(base.checks().size() >= 70, base.checks().size() + " checks");
    assertTrue(base.symptoms().size() >= 45, base.symptoms().size() + " symptoms");
    assertTrue(base.trails().size() >= 25, base.trails().size() + " false trails");
    Arrays.stream(Stage.values())
        .filter(stage -> stage != Stage.DONE)
        .forEach(
            stage -> {
              long listed = base.faults().stream().filter(f -> f.stage() == stage).count();
              long general =
                  base.faults().stream().filter(f -> f.stage() == stage && f.general()).count();
              assertTrue(listed >= 4, stage + ": " + listed);
              assertTrue(general >= 1, "no general fault in " + stage);
            });
  }

  @Test
  void noFaultNamesAnUnknownPart() {
    for (Fault fault : LOADED.base().faults()) {
      assertTrue(LOADED.base().scale().parts().containsKey(fault.part()), fault.id());
    }
  }
}
