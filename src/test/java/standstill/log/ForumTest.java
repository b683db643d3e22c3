package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What web pages, letters and forums do to a log. */
class ForumTest {
  private static final List<String> PLAIN =
      List.of(
          "[    1.000000] usb 1-1: new device",
          "[    1.500000] usb 1-1: not responding",
          "[    2.000000] usb 1-1: device not accepting address 2, error -71",
          "[    2.500000] usb usb1-port1: unable to enumerate USB device");

  private static String with(String before) {
    return before + String.join("\n" + before, PLAIN);
  }

  @Test
  void entitiesAreReadAsWhatTheyStandFor() {
    assertEquals(
        List.of("<6>[    1.000000] a & \"b\" 'c'"),
        Read.texts("&lt;6&gt;[&nbsp;   1.000000] a &amp; &quot;b&quot; &#39;c&#x27;"));
    assertEquals(List.of("a &unknown; b"), Read.texts("a &unknown; b"));
  }

  @Test
  void tagsAroundALogGo() {
    assertEquals(PLAIN, Read.texts("<pre><code>" + String.join("<br>", PLAIN) + "</code></pre>"));
    assertEquals(PLAIN, Read.texts("[code]" + String.join("\n", PLAIN) + "[/code]"));
    assertEquals(List.of("Set hostname to <bench>."), Read.texts("Set hostname to <bench>."));
  }

  @Test
  void quoteMarksAndFencesGo() {
    assertEquals(PLAIN, Read.texts(with("> ")));
    assertEquals(PLAIN, Read.texts(with("> > ")));
    assertEquals(PLAIN, Read.texts(with(">")));
    assertEquals(PLAIN, Read.texts("```text\n" + String.join("\n", PLAIN) + "\n```\n"));
  }

  @Test
  void theFirmwaresOwnArrowsStay() {
    assertEquals(List.of(">>Start PXE over IPv4."), Read.texts(">>Start PXE over IPv4.\n"));
  }

  @Test
  void lineNumbersOfAnEditorGo() {
    for (String form : List.of("%4d  %s", "%d: %s", "%d| %s", "%5d %s")) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < PLAIN.size(); i++) {
        text.append(String.format(form, i + 9, PLAIN.get(i))).append('\n');
      }
      assertEquals(PLAIN, Read.texts(text.toString()).stream().map(String::strip).toList(), form);
    }
  }

  @Test
  void numbersThatDontCountUpStay() {
    List<String> lines = List.of("4 errors", "2 warnings", "9 disks", "1 boot");
    assertEquals(lines, Read.texts(String.join("\n", lines)));
  }

  @Test
  void prettyCharactersBecomePlain() {
    assertEquals(
        List.of("Kernel panic - not syncing: \"x\" 'y'..."),
        Read.texts("Kernel panic \u2013 not syncing:\u00a0\u201cx\u201d \u2018y\u2019\u2026"));
  }

  @Test
  void marksOfCutsAreKeptAsCutsAndNotAsLines() {
    for (String mark :
        List.of("...", "[...]", "(snip)", "<snip>", "--- 8< ---", "\u2026", "[cut]")) {
      BootLog log =
          TestForms.reader().read(PLAIN.get(0) + "\n" + mark + "\n" + PLAIN.get(1) + "\n");
      assertEquals(2, log.boots().get(0).lines().size(), mark);
      assertEquals(List.of(3), log.boots().get(0).cuts(), mark);
    }
  }

  @Test
  void linesBrokenAtTheWindowsWidthAreJoined() {
    String joined =
        "[    1.000000] "
            + "EXT4-fs error (device sda1): ext4_lookup:1700: inode #2: comm x".repeat(2);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 3; i++) {
      String line = joined.replace("1.000000", "1.00000" + i);
      text.append(line, 0, 80).append('\n').append(line.substring(80)).append('\n');
    }
    text.append("[    2.000000] short\n");
    List<LogLine> lines = Read.lines(text.toString());
    assertEquals(4, lines.size());
    assertEquals(joined, lines.get(0).text());
    assertEquals(1, lines.get(0).number());
    assertEquals(2, lines.get(0).lastNumber());
    assertEquals(7, lines.get(3).number());
  }

  @Test
  void linesBrokenBetweenWordsAreJoined() {
    String text =
        "[    1.000000] usb 1-1: device descriptor read/64, error -110 and nothing\n"
            + "more from it\n"
            + "[    2.000000] ata1.00: exception Emask 0x0 SAct 0x0 SErr 0x0 action 0x6\n"
            + "frozen\n"
            + "[    3.000000] short\n";
    assertEquals(
        List.of(
            "usb 1-1: device descriptor read/64, error -110 and nothing more from it",
            "ata1.00: exception Emask 0x0 SAct 0x0 SErr 0x0 action 0x6 frozen",
            "short"),
        Read.messages(text));
  }

  @Test
  void statusLinesOfOneLengthAreNotJoined() {
    String text =
        "[  OK  ] Started a very long name of a service that fills all the columns up to\n"
            + "[  OK  ] Started b very long name of a service that fills all the columns up to\n"
            + "         Starting c very long name of a service that fills all the columns up.\n"
            + "[  OK  ] Started d very long name of a service that fills all the columns up to\n"
            + "[  OK  ] Started e very long name of a service that fills all the columns up to\n";
    assertEquals(5, Read.texts(text).size());
  }

  @Test
  void oneLongLineThatRepeatsProvesNoWidth() {
    String pair =
        "Begin: Running /scripts/local-block ... mdadm: No arrays found in config file or"
            + " automatically\ndone.\n";
    assertEquals(10, Read.texts(pair.repeat(5)).size());
  }
}
