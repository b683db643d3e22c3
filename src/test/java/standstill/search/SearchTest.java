package standstill.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.base.Base;
import standstill.base.TestBase;
import standstill.store.BaseFolder;

class SearchTest {
  private static Base base;
  private static Search search;

  @BeforeAll
  static void open() throws IOException {
    base = BaseFolder.read(Path.of("kb")).base();
    search = Search.open(base, Optional.empty());
  }

  private static List<String> ids(String query) {
    return search.find(query, Set.of(), 10).found().stream().map(Found::id).toList();
  }

  @Test
  void aPastedLineFindsTheFaultsWhoseSignsMatchItFirst() {
    Results results =
        search.find(
            "[    9.265] ALERT!  UUID=0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d does not exist.  Dropping"
                + " to a shell!",
            Set.of(),
            10);
    assertEquals("root-id-on-no-disk", results.found().get(0).id());
    assertTrue(results.found().get(0).bySign());
    boolean words = false;
    for (Found found : results.found()) {
      assertFalse(found.bySign() && words, "entries by words stand behind those by signs");
      words |= !found.bySign();
    }
  }

  @Test
  void pluralsSynonymsAndTypingErrorsFindTheSame() {
    assertTrue(ids("usb stick").contains("boot-stick-not-listed"));
    assertTrue(ids("thumb drives").contains("boot-stick-not-listed"));
    Results typing = search.find("hibernaton", Set.of(), 10);
    assertEquals(List.of(new Results.Reading("hibernaton", "hibernation")), typing.read());
    assertTrue(typing.found().stream().anyMatch(f -> f.id().equals("resume-image-refused")));
  }

  /** The word that was meant has its synonyms too. */
  @Test
  void aTypingErrorInASynonymFindsWhatTheWordFinds() {
    Results typing = search.find("thmb drive", Set.of(), 10);
    assertEquals(List.of(new Results.Reading("thmb", "thumb")), typing.read());
    assertEquals(ids("thumb drive"), typing.found().stream().map(Found::id).toList());
  }

  @Test
  void aSymptomBringsItsCausesAndACauseItsCheck() {
    assertTrue(ids("clock resets every time i unplug").contains("clock-kept-without-mains"));
    assertTrue(ids("/boot is full").contains("room-on-boot-partition"));
  }

  @Test
  void nothingFoundOffersTheNearestTitles() {
    Results results = search.find("qqq kernelpanicqq", Set.of(), 10);
    assertTrue(results.nearest());
    assertFalse(results.found().isEmpty());
    assertTrue(search.find("   ", Set.of(), 10).found().isEmpty());
  }

  @Test
  void markedWordsAreThoseOfTheQuery() {
    Found first = search.find("passphrase refused", Set.of(), 1).found().get(0);
    assertEquals("encryption-passphrase-refused", first.id());
    assertEquals(
        List.of("passphrase", "refused"),
        first.title().stream().filter(Segment::matched).map(Segment::text).toList());
    assertEquals(base.fault(first.id()).orElseThrow().title(), Segment.join(first.title()));
  }

  @Test
  void kindsNarrowTheResults() {
    Results checks = search.find("memory", Set.of(Kind.CHECK), 50);
    assertTrue(checks.found().stream().allMatch(f -> f.kind() == Kind.CHECK));
    assertTrue(checks.counts().containsKey(Kind.FAULT));
  }

  /** A new base has no checks, no symptoms and no signs yet. */
  @Test
  void aBaseWithoutSomeKindsOfTextsIsSearchedToo() {
    Base small = new TestBase().fault("lantern-dark", 1).add().build();
    Search over = Search.open(small, Optional.empty());
    assertEquals(
        "lantern-dark", over.find("dark lantern", Set.of(), 1).found().get(0).id(), "by words");
    assertTrue(over.find("lanterm", Set.of(), 1).found().size() == 1, "by the nearest word");
    assertEquals(
        0, Search.open(new TestBase().build(), Optional.empty()).find("x", Set.of(), 1).total());
  }

  @Test
  void hostileQueriesAreOnlyText() {
    for (String query :
        List.of("*", "\"", "a AND (", "~~~", "[1 TO", "\\", "?:", "\u0000", "/".repeat(900))) {
      search.find(query, Set.of(), 10);
      search.suggest(query, 5);
    }
  }

  @Test
  void suggestionsGoOnFromWhatWasTyped() {
    assertTrue(search.suggest("black scr", 8).contains("black screen after grub"));
    assertEquals(List.of(), search.suggest("q", 8));
  }

  @Test
  void anIndexThatFitsIsUsedAgainAndOneOfAnotherBaseIsNot(@TempDir Path folder) throws IOException {
    assertTrue(builds(base, folder));
    assertFalse(builds(base, folder));
    assertTrue(builds(base.without("root-id-on-no-disk"), folder));
  }

  private static boolean builds(Base base, Path folder) throws IOException {
    Search opened = Search.open(base, Optional.of(folder));
    assertFalse(opened.find("kernel panic", Set.of(), 5).found().isEmpty());
    return opened.wasBuilt();
  }

  @Test
  void aBrokenOrHalfWrittenIndexIsBuiltAgain(@TempDir Path folder) throws IOException {
    assertTrue(builds(base, folder));
    List<Path> files;
    try (Stream<Path> list = Files.list(folder)) {
      files =
          list.filter(f -> !f.toString().endsWith(".lock"))
              .filter(f -> !f.endsWith("STANDSTILL-INDEX.txt"))
              .toList();
    }
    assertTrue(files.size() >= 2);
    for (Path file : files) {
      String name = file.getFileName().toString();
      byte[] whole = Files.readAllBytes(file);
      Files.write(file, java.util.Arrays.copyOf(whole, whole.length / 2));
      assertTrue(builds(base, folder), name + " cut in half");
      garble(folder, name);
      assertTrue(builds(base, folder), name + " garbled");
      Files.delete(folder.resolve(name));
      assertTrue(builds(base, folder), name + " gone");
      Files.write(folder.resolve(name), new byte[0]);
      assertTrue(builds(base, folder), name + " empty");
      assertFalse(builds(base, folder), "whole again after " + name);
    }
  }

  private static void garble(Path folder, String name) throws IOException {
    Path file = folder.resolve(name);
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 0x55;
    Files.write(file, bytes);
  }

  @Test
  void aFolderThatCantBeWrittenLeavesMemoryAndSaysWhy(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "no folder");
    Search opened = Search.open(base, Optional.of(file.resolve("index")));
    assertFalse(opened.find("kernel panic", Set.of(), 5).found().isEmpty());
    assertFalse(opened.notKept().orElseThrow().isBlank());
  }

  @Test
  void facetsCountWhatChoosingThemShows() {
    Browse browse = new Browse(base);
    Map<Browse.Facet, Set<String>> choice = Map.of(Browse.Facet.STAGE, Set.of("root"));
    Browse.Shown shown = browse.show(choice);
    assertTrue(shown.faults().stream().allMatch(f -> f.stage().word().equals("root")));
    for (Browse.Value part : shown.facets().get(Browse.Facet.PART)) {
      assertEquals(
          part.count(),
          browse
              .show(
                  Map.of(Browse.Facet.STAGE, Set.of("root"), Browse.Facet.PART, Set.of(part.id())))
              .faults()
              .size(),
          part.id());
    }
    assertEquals(base.faults().size(), browse.show(Map.of()).faults().size());
  }
}
