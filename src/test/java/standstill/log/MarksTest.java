package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.LineForm;
import standstill.base.Marks;
import standstill.text.Pattern;

/** What stands between messages is data: an invented kernel, whose marks are like no real one's. */
class MarksTest {
  private static final Family TOY =
      new Family(
          "toy",
          "Toy kernel",
          List.of(),
          "",
          List.of(line("^Toy kernel ")),
          List.of(),
          List.of(),
          List.of(line("^Toy kernel ")),
          List.of(),
          List.of(
              new LineForm("ticks", Pattern.known("@(?P<seconds>\\d+\\.\\d)@ "), false, List.of()),
              new LineForm("drum", Pattern.known("!(?P<seconds>\\d+)! "), true, List.of())),
          List.of(),
          standstill.base.Facts.NONE,
          new Marks(
              List.of(line("@\\d+\\.\\d@ ")),
              List.of(line("[.o]{3} (?P<job>[a-z ]+) \\d+$")),
              List.of(line("=+ again =+$")),
              List.of(line("drum of ")),
              "toy"));

  private static Example line(String pattern) {
    return new Example(Pattern.known(pattern), List.of());
  }

  private static BootLog read(String text) {
    return new LogReader(List.of(TOY)).read(text);
  }

  private static List<String> messages(String text) {
    return Read.lines(read(text)).stream().map(LogLine::message).toList();
  }

  @Test
  void linesOfItsKernelAreCutOutOfOthers() {
    assertEquals(
        List.of("Toy kernel 1", "the lamp is", "wick found", "[    1.234567] no stamp here"),
        messages(
            "@0.0@ Toy kernel 1\n@0.1@ the lamp is @0.2@ wick found\n@0.3@ [    1.234567] no stamp here\n"));
  }

  @Test
  void theLastOfItsWaitingLinesStandsForAll() {
    assertEquals(
        List.of("Toy kernel 1", "o.. the lamp 3", "..o the wick 2", "@@ lit"),
        messages(
            "@0.0@ Toy kernel 1\no.. the lamp 1\n.o. the wick 1\n..o the lamp 2\no.. the lamp 3\n..o the wick 2\n@@ lit\n"));
  }

  @Test
  void itsSeparatorsAndHeadingsDivideBoots() {
    BootLog log =
        read(
            "drum of today\n== again ==\n@0.0@ Toy kernel 1\n@0.1@ lit\n== again ==\n@9.0@ dark\n");
    assertEquals(List.of(4, 2), log.boots().stream().map(boot -> boot.lines().size()).toList());
  }

  @Test
  void itsRecordsCountMicrosecondsAndWriteBytesInHexadecimal() {
    LogLine line =
        Read.lines(read("@0.0@ Toy kernel 1\n!1500000! lamp \\x3a lit\n LAMP=lit\n")).get(1);
    assertEquals("lamp : lit", line.message());
    assertEquals(OptionalDouble.of(1.5), line.seconds());
    assertEquals(3, line.lastNumber());
  }
}
