package standstill.disguise;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Twice the text, hardly more than twice the work: counted in bytes that are allocated. */
class LinearTest {
  private static final int SMALL = 1_000;
  private static final double MOST_PER_DOUBLING = 2.5;

  private static Stream<DynamicTest> of(String name, IntFunction<String> piece, String between) {
    return Stream.of(
        DynamicTest.dynamicTest(name, () -> doubles(lines(piece, between, false))),
        DynamicTest.dynamicTest(
            name + ", in one line", () -> doubles(lines(piece, between, true))));
  }

  private static IntFunction<List<String>> lines(
      IntFunction<String> piece, String between, boolean one) {
    return count -> {
      List<String> pieces = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        pieces.add(piece.apply(i));
      }
      return one ? List.of(String.join(between, pieces)) : pieces;
    };
  }

  private static void doubles(IntFunction<List<String>> text) {
    work(text.apply(SMALL));
    long one = work(text.apply(SMALL));
    long two = work(text.apply(2 * SMALL));
    assertTrue(
        two < one * MOST_PER_DOUBLING, one + " bytes for one, " + two + " for twice as much");
  }

  private static long work(List<String> lines) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    Disguise.of(lines).apply(lines);
    return threads.getCurrentThreadAllocatedBytes() - before;
  }

  @TestFactory
  Stream<DynamicTest> workGrowsWithTheText() {
    return Stream.of(
            of("serial numbers", i -> "usb 1-" + i + ": SerialNumber: LAN" + (10_000 + i), " "),
            of("hosts", i -> "Hostname set to <lantern" + i + "x>", " "),
            of("users", i -> "session opened for user lena" + i + "q", " "),
            of("pairs", i -> String.format("%02x", i & 255), ":"),
            of("numbers", i -> String.valueOf(i & 255), "."),
            of("words of the command line", i -> "Command line: ro lantern" + i + "=x" + i, " "),
            of("words without a value", i -> "quiet", " "),
            of("labels", i -> "LABEL=garten" + i + "haus", " "),
            of("open quotes", i -> "ssid=\"Garten" + i, " "),
            of("units", i -> "garten" + i + "x.service", " "),
            of("a unit without an end", i -> "garten" + i, "-"),
            of("addresses", i -> "http://garten" + i + ".attic.lan/x", " "),
            of("mail", i -> "lena" + i + "@attic.lan", " "),
            of("at signs", i -> "a@b", "@"),
            of("paths", i -> "/home/lena" + i, ""),
            of("colours", i -> "\u001b[1mx", "\u001b[0m"),
            of("escapes", i -> "\\x2d", ""),
            of("backslashes", i -> "\\", ""),
            of("brackets", i -> "[0;1", "["),
            of("secrets", i -> "password=geheim" + i, " "))
        .flatMap(s -> s);
  }
}
