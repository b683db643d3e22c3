package standstill.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.search.Search;
import standstill.text.Problem;

/** The base in use follows its folder; each look stands for one second of the watch. */
class BaseInUseTest {
  private static final String FAULT = "root-id-on-no-disk";

  @TempDir private Path folder;
  private Path entry;
  private BaseInUse inUse;

  @BeforeEach
  void copyTheBase() throws Exception {
    BaseCopy.into(folder);
    entry = folder.resolve("faults/root/" + FAULT + ".yaml");
    inUse = BaseInUse.of(folder, base -> Search.open(base, Optional.empty()));
  }

  private void write(String find, String put) throws IOException {
    String text = Files.readString(entry);
    assertTrue(text.contains(find), find);
    Files.writeString(entry, text.replace(find, put));
  }

  private String title() {
    return inUse.now().edition().base().fault(FAULT).orElseThrow().title();
  }

  @Test
  void aChangeIsTakenUpWhenTheFolderHasComeToRest() throws Exception {
    Edition first = inUse.now().edition();
    inUse.look();
    assertSame(first, inUse.now().edition(), "nothing changed");
    write("title: The root file system", "title: Lantern test, the root file system");
    inUse.look();
    assertSame(first, inUse.now().edition(), "it may still be written to");
    inUse.look();
    assertTrue(title().startsWith("Lantern test"));
    assertNotSame(first.search(), inUse.now().edition().search());
    Edition second = inUse.now().edition();
    assertEquals(
        FAULT,
        second.search().find("lantern test", java.util.Set.of(), 1).found().get(0).id(),
        "the search follows");
    assertEquals(first.number() + 1, second.number());
    inUse.look();
    assertSame(second, inUse.now().edition(), "it is read once");
  }

  @Test
  void aFileThatKeepsItsSizeIsNoticed() throws Exception {
    write("title: The root", "title: Thy root");
    inUse.look();
    inUse.look();
    assertTrue(title().startsWith("Thy root"));
  }

  @Test
  void aBaseWithErrorsIsRefusedUntilItIsRepaired() throws Exception {
    List<BaseInUse.State> told = new ArrayList<>();
    inUse.onChange(told::add);
    Edition first = inUse.now().edition();
    write("how-common: ", "how-common: ofen # ");
    inUse.look();
    inUse.look();
    assertSame(first, inUse.now().edition());
    Problem error = inUse.now().refused().orElseThrow().errors().get(0);
    assertTrue(error.isError());
    assertTrue(error.position().line() > 0 && error.position().column() > 0, error.toString());
    assertTrue(error.message().contains("ofen"), error.toString());
    write("how-common: ofen # ", "how-common: ");
    inUse.look();
    inUse.look();
    assertTrue(inUse.now().refused().isEmpty());
    assertNotSame(first, inUse.now().edition());
    assertEquals(2, told.size());
    assertTrue(told.get(0).refused().isPresent() && told.get(1).refused().isEmpty());
  }

  @Test
  void aBaseThatBreaksARuleOfTheWholeIsRefusedToo() throws Exception {
    Files.writeString(
        folder.resolve("symptoms.yaml"),
        Files.readString(folder.resolve("symptoms.yaml")).stripTrailing()
            + """

            - id: lantern-flickers
              title: The lantern flickers
              look: Invented for this test.
              stages: [root]
              words: [flicker]
              reviewed: {on: 2026-11-26, by: base-team}
            """);
    assertTrue(
        inUse.reload().refused().orElseThrow().errors().get(0).message().contains("no fault shows"),
        inUse.now().refused().toString());
  }

  @Test
  void whoeverAsksForAReloadNeedNotWaitForTheWatch() throws Exception {
    write("title: The root", "title: Asked for, the root");
    Edition taken = inUse.reload().edition();
    assertTrue(title().startsWith("Asked for"));
    inUse.look();
    inUse.look();
    assertSame(taken, inUse.now().edition());
  }

  @Test
  void aFolderThatIsGoneLeavesTheBaseInUse() throws Exception {
    Edition first = inUse.now().edition();
    Files.move(folder.resolve("scale.yaml"), folder.resolve("scale.away"));
    assertTrue(inUse.reload().refused().isPresent());
    assertSame(first, inUse.now().edition());
  }

  @Test
  void labelledBootsBelongToTheFaultThatStoppedThem() {
    Edition edition = inUse.now().edition();
    assertFalse(edition.bootsOf(FAULT).isEmpty());
    assertTrue(edition.bootsOf(FAULT).stream().allMatch(label -> label.label().equals(FAULT)));
    assertTrue(edition.bootsOf("no-such-fault").isEmpty());
  }

  @Test
  void aBaseWithErrorsIsNoBaseToBeginWith() throws Exception {
    write("how-common: ", "how-common: ofen # ");
    assertThrows(
        RefusedBaseException.class,
        () -> BaseInUse.of(folder, base -> Search.open(base, Optional.empty())));
  }
}
