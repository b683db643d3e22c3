package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Serial captures: terminal codes by ECMA-48, and what is left when a code lost its escape. */
class TerminalTest {
  private static final String E = "\u001b";

  @Test
  void coloursGoInBothSpellings() {
    assertEquals(
        List.of("[  OK  ] Started cron.service."),
        Read.texts(
            "["
                + E
                + "[0;32m  OK  "
                + E
                + "[0m] Started "
                + E
                + "[0;1;39mcron.service"
                + E
                + "[0m.\r\n"));
    assertEquals(List.of("red text"), Read.texts(E + "[38:5:196mred" + E + "[m text"));
    assertEquals(List.of("red text"), Read.texts("\u009b31mred\u009bm text"));
  }

  @Test
  void debrisOfColoursGoes() {
    assertEquals(
        List.of("[FAILED] Failed to mount /home."),
        Read.texts("[[0;1;31mFAILED[0m] Failed to mount /home."));
    assertEquals(List.of("Started sys...nager"), Read.texts("Started [0;1;39msys[0;1;...nager[0m"));
    assertEquals(List.of("[  OK  ] Started X."), Read.texts("[K[  OK  ] Started X."));
    assertEquals(List.of("[FAILED] x"), Read.texts("^[[0;1;31m[FAILED]^[[0m x"));
    assertEquals(List.of("[FAILED] x"), Read.texts("#033[1;31m[FAILED]#033[0m x"));
  }

  @Test
  void bracketsThatMeanSomethingStay() {
    for (String text :
        List.of(
            "[  OK  ] Started X.",
            "[    1.234567] usb 1-1: x",
            "[FAILED] x",
            "[1] 212 done",
            "BIOS-e820: [mem 0x0000000000000000-0x000000000009ffff] usable",
            "[mem 0x0-0x1] usable",
            "waited [5ms]",
            "[Kernel] x")) {
      assertEquals(List.of(text), Read.texts(text));
    }
  }

  @Test
  void commandsForTheWindowGo() {
    assertEquals(List.of("bench login:"), Read.texts(E + "]0;bench" + '\u0007' + "bench login:"));
    assertEquals(List.of("bench login:"), Read.texts(E + "]3008;start=1" + E + "\\bench login:"));
    assertEquals(List.of("x y"), Read.texts(E + "]P1ff0000x y" + E + "]R"));
  }

  @Test
  void eachUpdateOfALineIsKeptUnderItsNumber() {
    String text = "one\nloading 10%\rloading 20%\rloading 20%\rloading 30%\r\nthree\n";
    assertEquals(
        List.of("one", "loading 10%", "loading 20%", "loading 30%", "three"), Read.texts(text));
    assertEquals(List.of(1, 2, 2, 2, 3), Read.numbers(text));
  }

  @Test
  void spinnersCollapseAndTheFailureAfterThemSurvives() {
    StringBuilder text = new StringBuilder();
    for (int i = 1; i <= 90; i++) {
      String stars = i % 2 == 0 ? "[***   ]" : "[   ***]";
      text.append(stars).append(" A start job is running for /dev/sda3 (").append(i);
      text.append("s / 1min 30s)\r").append(E).append("[K");
    }
    text.append("[ TIME ] Timed out waiting for device /dev/sda3.\r\n");
    text.append("[FAILED] Failed to mount /home.\r\n");
    assertEquals(
        List.of(
            "[***   ] A start job is running for /dev/sda3 (90s / 1min 30s)",
            "[ TIME ] Timed out waiting for device /dev/sda3.",
            "[FAILED] Failed to mount /home."),
        Read.texts(text.toString()));
  }

  @Test
  void spinnersOfTwoJobsKeepTheLastOfEach() {
    String text =
        "[*     ] (1 of 2) A start job is running for A (1s / no limit)\n"
            + E
            + "M\r"
            + E
            + "[K[**    ] (2 of 2) A start job is running for B (1s / 90s)\n"
            + E
            + "M\r"
            + E
            + "[K[***   ] (1 of 2) A start job is running for A (2s / no limit)\n";
    assertEquals(
        List.of(
            "[**    ] (2 of 2) A start job is running for B (1s / 90s)",
            "[***   ] (1 of 2) A start job is running for A (2s / no limit)"),
        Read.texts(text));
  }

  @Test
  void backspacesOverwrite() {
    assertEquals(List.of("Starting 3"), Read.texts("Starting 1\b2\b3\n"));
    assertEquals(List.of("net0: up"), Read.texts("Press\b \b\b \b\b \b\b \b\b \bnet0: up"));
  }

  @Test
  void savedCursorPutsTheStatusInFront() {
    assertEquals(
        List.of("[ ok ] Starting cron."),
        Read.texts("[....] Starting cron" + E + "7" + E + "[1G[ ok " + E + "8."));
  }

  @Test
  void lineEndsOfEveryKindGiveTheSameLines() {
    List<String> expected = List.of("[    1.000000] a", "[    2.000000] b", "[    3.000000] c");
    for (String end : List.of("\n", "\r\n", "\r\r\n", "\n\r")) {
      assertEquals(expected, Read.texts(String.join(end, expected) + end));
    }
    assertEquals(expected, Read.texts(String.join("\r", expected)));
  }

  @Test
  void aKernelLineThatCutsIntoAPromptIsALineOfItsOwn() {
    String text =
        "Give root password for maintenance[   12.345678] EXT4-fs (sda1): re-mounted\n"
            + "[  OK  [   13.000000] usb 1-1: new device\n";
    assertEquals(
        List.of(
            "Give root password for maintenance",
            "EXT4-fs (sda1): re-mounted",
            "[  OK",
            "usb 1-1: new device"),
        Read.messages(text));
    assertEquals(List.of(1, 1, 2, 2), Read.numbers(text));
  }

  @Test
  void aMenuDrawnWithCursorAddressesIsReadAsLines() {
    BootLog log = TestForms.reader().read(Read.resource("uefi-loader-kernel.log"));
    List<String> texts = Read.lines(log).stream().map(LogLine::message).toList();
    assertTrue(texts.contains("GNU GRUB  version 2.06-13+deb12u2"), texts::toString);
    assertTrue(texts.contains("*Linux"), texts::toString);
    assertTrue(texts.contains("Booting `Linux'"), texts::toString);
    assertTrue(texts.contains("Loading initial ramdisk ..."), texts::toString);
    assertFalse(
        texts.stream().anyMatch(t -> t.contains("+---") || t.contains("|")), texts::toString);
    assertEquals(
        1,
        texts.stream().filter(t -> t.contains("executed automatically")).count(),
        texts::toString);
    assertEquals(1, log.boots().size());
    assertEquals("linux", log.family());
  }

  @Test
  void positionsThatAProgramOnlyAsksAboutMoveNothing() {
    assertEquals(
        List.of("bench login:"),
        Read.texts(E + "7" + E + "[r" + E + "[999;999H" + E + "[6n" + E + "8bench login:"));
  }

  @Test
  void confirmedCursorPositionsDontBreakALine() {
    assertEquals(
        List.of("Welcome to GRUB!"),
        Read.texts("Welcome to G" + E + "[04;12H" + E + "[04;13HRUB!"));
  }

  @Test
  void clearedScreenDividesLines() {
    assertEquals(
        List.of("Probing EDD (edd=off to disable)... o", "[    0.000000] Linux version 6.1.0"),
        Read.texts(
            "Probing EDD (edd=off to disable)... o"
                + E
                + "c"
                + E
                + "[2J[    0.000000] Linux"
                + " version 6.1.0"));
  }

  @Test
  void aTextReplacedOnTheScreenIsNotLost() {
    List<String> texts =
        Read.texts(
            E + "[5;3Herror: no such device" + E + "[5;3H" + E + "[KEntering rescue mode...");
    assertEquals(List.of("error: no such device", "Entering rescue mode..."), texts);
  }

  @Test
  void statusLinesKeepTheirColumns() {
    BootLog log = TestForms.reader().read(Read.resource("services-login.log"));
    List<LogLine> lines = Read.lines(log);
    assertTrue(
        lines.stream()
            .anyMatch(
                l -> l.message().equals("[  OK  ] Reached target getty.target - Login Prompts.")));
    assertEquals("bootbox login:", lines.get(lines.size() - 1).message());
  }

  @Test
  void aVeryLongLineIsCutWithAMark() {
    String text = Read.texts("[    1.000000] " + "x".repeat(300_000)).get(0);
    assertTrue(text.length() < 101_000);
    assertTrue(text.endsWith(" more characters]"));
  }

  @Test
  void moreCursorCodesThanAnyScreenNeedsOnlyPartTheText() {
    String text =
        "[    1.000000] usb 1-1: x\n"
            + "\u001b[999Ga\r\u001b[999Gb\r".repeat(2_500)
            + "\n\u001b[5;9Hlast\n";
    BootLog log = TestForms.reader().read(text);
    List<LogLine> lines = Read.lines(log);
    assertEquals(
        List.of(
            "From line 2 on, codes that move the cursor were not followed: the text holds far more of"
                + " them than a screen shows."),
        log.limits());
    assertEquals(5_002, lines.size());
    assertEquals("last", lines.get(5_001).text());
    assertTrue(lines.stream().mapToInt(l -> l.text().length()).sum() < 200_000 + 9 * text.length());
  }
}
