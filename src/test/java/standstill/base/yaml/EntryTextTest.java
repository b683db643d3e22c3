package standstill.base.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class EntryTextTest {
  private static final String TEXT =
      """
      # kept on purpose
      title: The wick is wet   # a short one
      about: >
        One line
        and another.

      # about symptoms
      symptoms: [no-light, smell]
      signs:
        # the first
        - line: 'wick (?P<n>\\d+) ''wet'''
          seen:
            - 'wick 3 ''wet'''   # from the bench
            - 'wick 4 ''wet'''
          unlike: ['wick 3 dry']
        - without: login
      reviewed: {on: 2026-01-01, by: ada}
      """;

  private static String changed(String path, String value) {
    return EntryText.of(TEXT).with(path, value).orElseThrow().text();
  }

  @Test
  void aValueIsReplacedAndCommentsStay() {
    assertEquals(
        TEXT.replace("The wick is wet ", "The wick is dry "), changed("title", "The wick is dry"));
    assertEquals(TEXT.replace("by: ada", "by: bram"), changed("reviewed.by", "bram"));
    assertEquals(TEXT.replace("The wick is wet ", "'Wick: wet' "), changed("title", "Wick: wet"));
    assertEquals(
        TEXT.replace("(?P<n>\\d+) ''wet''", "(?P<n>\\d+) ''damp''"),
        changed("signs.0.line", "wick (?P<n>\\d+) 'damp'"));
  }

  @Test
  void aFoldedTextStaysFolded() {
    assertEquals(
        TEXT.replace("  One line\n  and another.\n", "  Something else.\n"),
        changed("about", "Something else."));
  }

  @Test
  void listsKeepTheirLayout() {
    EntryText text = EntryText.of(TEXT);
    assertEquals(
        TEXT.replace("[no-light, smell]", "[smell]"),
        text.with("symptoms", List.of("smell")).orElseThrow().text());
    assertEquals(
        TEXT.replace(
            "seen:\n      - 'wick 3 ''wet'''   # from the bench\n      - 'wick 4 ''wet'''",
            "seen:\n      - 'wick 5'\n      - '- 6: #7'"),
        text.with("signs.0.seen", List.of("wick 5", "- 6: #7")).orElseThrow().text());
    assertEquals(
        Optional.of(List.of()),
        text.with("signs.0.seen", List.of()).orElseThrow().values("signs.0.seen"));
  }

  @Test
  void aMissingKeyIsAddedAtTheEndOfItsMap() {
    String text = changed("signs.0.says", "Wick {n} is wet");
    assertTrue(
        text.contains("    unlike: ['wick 3 dry']\n    says: 'Wick {n} is wet'\n  - without"),
        text);
  }

  @Test
  void aSignIsAddedBehindTheLast() {
    String text =
        EntryText.of(TEXT).withItem("signs", "line: 'x'\nseen: ['x']\n").orElseThrow().text();
    assertTrue(text.contains("  - without: login\n  - line: 'x'\n    seen: ['x']\nreviewed"), text);
  }

  @Test
  void hostileValuesComeOutAsTheyWentIn() {
    for (String value :
        List.of(
            "'",
            "''",
            "\"",
            "a: b # c",
            "- x",
            "&a *b !c",
            "{x}",
            "[y]",
            "ü𝄞 €",
            "\\n",
            "no",
            "~",
            "%")) {
      for (String path : List.of("title", "about", "signs.0.line", "reviewed.by")) {
        EntryText written = EntryText.of(TEXT).with(path, value).orElseThrow();
        assertEquals(Optional.of(value), written.value(path), path);
        assertEquals(Optional.of("login"), written.value("signs.1.without"), path);
      }
    }
    assertEquals(
        Optional.of("one two"),
        EntryText.of(TEXT)
            .with("title", "one\n two: 3")
            .map(t -> t.value("title"))
            .map(v -> v.orElse("").substring(0, 7)));
  }

  @Test
  void whatIsNoYamlIsLeftAlone() {
    EntryText broken = EntryText.of("title: [\n");
    assertFalse(broken.isSound());
    assertTrue(broken.with("title", "x").isEmpty());
    assertTrue(EntryText.of(TEXT).with("signs.7.line", "x").isEmpty());
    assertTrue(EntryText.of(TEXT).with("signs", "x").isEmpty());
  }

  /** Every value of every entry of the base, written and written back, changes nothing else. */
  @Test
  void valuesOfTheWholeBaseGoInAndOut() throws IOException {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(Path.of("kb/faults"))) {
      files = walk.filter(p -> p.toString().endsWith(".yaml")).sorted().toList();
    }
    assertTrue(files.size() > 200, "only " + files.size());
    List<String> odd = new ArrayList<>();
    for (Path file : files) {
      EntryText text = EntryText.of(Files.readString(file));
      for (String path :
          List.of(
              "title",
              "about",
              "prevent",
              "how-common",
              "signs.0.line",
              "signs.0.says",
              "fixes.0.title",
              "fixes.0.prove")) {
        Optional<String> old = text.value(path);
        if (old.isEmpty()) {
          continue;
        }
        String value = old.get().replaceAll("\\s+", " ").strip();
        Optional<EntryText> other = text.with(path, value + " x");
        Optional<EntryText> back = other.flatMap(o -> o.with(path, value));
        if (back.isEmpty() || !others(back.get(), path).equals(others(text, path))) {
          odd.add(file + " " + path);
        }
      }
      for (String path :
          List.of("symptoms", "leads-to", "signs.0.seen", "signs.0.unlike", "fixes.0.steps")) {
        Optional<List<String>> old = text.values(path);
        if (old.isEmpty()) {
          continue;
        }
        List<String> more = new ArrayList<>(old.get());
        more.add("one more, 'quoted'");
        Optional<EntryText> back = text.with(path, more).flatMap(o -> o.with(path, old.get()));
        if (back.isEmpty() || !others(back.get(), path).equals(others(text, path))) {
          odd.add(file + " " + path);
        }
      }
    }
    assertEquals(List.of(), odd);
  }

  private static List<Object> others(EntryText text, String but) {
    List<Object> values = new ArrayList<>();
    for (String path :
        List.of(
            "id",
            "title",
            "about",
            "prevent",
            "signs.0.line",
            "signs.1.line",
            "fixes.0.title",
            "reviewed.by")) {
      if (!path.equals(but)) {
        values.add(text.value(path));
      }
    }
    values.add(text.values("family"));
    values.add(text.size("signs"));
    values.add(text.size("fixes"));
    values.add(text.size("sources"));
    return values;
  }
}
