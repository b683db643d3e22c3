package standstill.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import standstill.base.Example;
import standstill.base.LineForm;

/** The beginnings of lines in the forms in which kernels, journals and syslog write them. */
class LineFormsTest {
  private static LogLine only(String text) {
    List<LogLine> lines = lines(text);
    assertEquals(1, lines.size(), lines::toString);
    return lines.get(0);
  }

  private static List<LogLine> lines(String text) {
    BootLog log = TestForms.reader().read(text);
    return log.boots().stream().flatMap(b -> b.lines().stream()).toList();
  }

  private static void says(String text, String message, double seconds) {
    LogLine line = only(text);
    assertEquals(message, line.message());
    assertEquals(OptionalDouble.of(seconds), line.seconds());
  }

  @TestFactory
  Stream<DynamicTest> everyFormMatchesWhatItWasSeenAs() {
    return TestForms.LINUX.lineForms().stream()
        .map(
            (LineForm form) ->
                DynamicTest.dynamicTest(
                    form.id(),
                    () ->
                        form.seen()
                            .forEach(
                                s -> assertTrue(form.prefix().findAtStart(s).isPresent(), s))));
  }

  @TestFactory
  Stream<DynamicTest> everyRecogniserMatchesWhatItWasSeenIn() {
    return Stream.concat(TestForms.LINUX.recognise().stream(), TestForms.LINUX.begins().stream())
        .map(
            (Example example) ->
                DynamicTest.dynamicTest(
                    example.line().source(),
                    () -> example.seen().forEach(s -> assertTrue(example.line().foundIn(s), s))));
  }

  @Test
  void ringBufferStampsAreTakenOff() {
    says("[    1.234567] usb 1-1: new device", "usb 1-1: new device", 1.234567);
    says("[12345.678901] reboot: Restarting system", "reboot: Restarting system", 12345.678901);
    says("[260187.601284] x", "x", 260187.601284);
  }

  @Test
  void callerColumnIsTakenOff() {
    says("[    1.234567][    T1] usb 1-1: new device", "usb 1-1: new device", 1.234567);
    says("[    1.234567][    C0] hrtimer: slow", "hrtimer: slow", 1.234567);
  }

  @Test
  void rawPriorityGivesTheLevel() {
    LogLine line = only("<6>[    0.000000] Linux version 6.1.0");
    assertEquals("Linux version 6.1.0", line.message());
    assertEquals(OptionalInt.of(6), line.level());
    assertEquals(OptionalInt.of(3), only("<3>ata1: failed to resume link").level());
  }

  @Test
  void decodedLevelsAreRead() {
    LogLine line = only("kern  :err   : [    1.500000] ata1: SRST failed (errno=-16)");
    assertEquals("ata1: SRST failed (errno=-16)", line.message());
    assertEquals(OptionalInt.of(3), line.level());
    assertEquals(OptionalDouble.of(1.5), line.seconds());
  }

  @Test
  void calendarStampsBecomeSecondsSinceTheFirst() {
    List<LogLine> lines =
        lines(
            "[Tue Jan 20 10:17:44 2026] Linux version 6.12.16\n"
                + "[Tue Jan 20 10:19:14 2026] systemd[1]: Timed out waiting for device.\n");
    assertEquals(OptionalDouble.of(0), lines.get(0).seconds());
    assertEquals(OptionalDouble.of(90), lines.get(1).seconds());
    assertEquals("Timed out waiting for device.", lines.get(1).message());
    assertEquals("systemd", lines.get(1).process());
  }

  @Test
  void syslogWithoutAYearGoesOverTheTurnOfTheYear() {
    List<LogLine> lines =
        lines(
            "Dec 31 23:59:50 bench kernel: usb 1-1: new device\n"
                + "Jan  1 00:00:20 bench kernel: usb 1-1: reset\n");
    assertEquals(OptionalDouble.of(30), lines.get(1).seconds());
    assertEquals("kernel", lines.get(1).process());
    assertEquals("usb 1-1: reset", lines.get(1).message());
  }

  @Test
  void syslogWithAKernelStampUsesTheKernelsSeconds() {
    List<LogLine> lines =
        lines(
            "Nov 25 10:00:00 bench kernel: [    2.500000] usb 1-1: new device\n"
                + "Nov 25 10:00:04 bench systemd[1]: Reached target Basic System.\n");
    assertEquals(OptionalDouble.of(2.5), lines.get(0).seconds());
    assertEquals(OptionalDouble.of(6.5), lines.get(1).seconds());
    assertEquals("usb 1-1: new device", lines.get(0).message());
    assertEquals("Reached target Basic System.", lines.get(1).message());
  }

  @Test
  void journalFormsAreRead() {
    says(
        "[    4.869565] host.example kernel: usb 1-1: new device", "usb 1-1: new device", 4.869565);
    says("[    6.98] systemd[1]: Starting Journal Service...", "Starting Journal Service...", 6.98);
    LogLine iso = only("2026-11-25T10:00:00+0000 bench systemd[1]: Reached target Basic System.");
    assertEquals("Reached target Basic System.", iso.message());
    assertEquals("systemd", iso.process());
    assertEquals(
        "Linux version 6.1.0",
        only("Wed 2026-11-25 10:00:00 UTC bench kernel: Linux version 6.1.0").message());
    assertEquals(
        "Linux version 6.1.0",
        only("Nov 25 10:00:00.123456 bench kernel: Linux version 6.1.0").message());
  }

  @Test
  void kernelWordsThatLookLikeAHostAreKept() {
    says("[    1.000000] usb 1-1: new device", "usb 1-1: new device", 1);
    says("[    1.000000] foo[123]: segfault at 0 ip 0", "foo[123]: segfault at 0 ip 0", 1);
  }

  /** The device's own examples, Documentation/ABI/testing/dev-kmsg in the kernel's source. */
  @Test
  void recordsOfTheKernelLogDeviceAreRead() {
    LogLine line = only("6,339,5140900,-;NET: Registered protocol family 10");
    assertEquals("NET: Registered protocol family 10", line.message());
    assertEquals(OptionalDouble.of(5.1409), line.seconds());
    assertEquals(OptionalInt.of(6), line.level());
    assertEquals(
        OptionalInt.of(6), only("30,340,5690716,-;udevd[80]: starting version 181").level());
  }

  /** RFC 5424 section 6.5, examples 1 and 2, without the byte-order mark. */
  @Test
  void examplesOfTheSyslogStandardAreRead() {
    LogLine first =
        only(
            "<34>1 2003-10-11T22:14:15.003Z mymachine.example.com su - ID47 - 'su root' failed for"
                + " lonvick on /dev/pts/8");
    assertEquals("'su root' failed for lonvick on /dev/pts/8", first.message());
    assertEquals(OptionalInt.of(2), first.level());
    assertEquals("su", first.process());
    LogLine second =
        only(
            "<165>1 2003-08-24T05:14:15.000003-07:00 192.0.2.1 myproc 8710 - - %% It's time to make"
                + " the do-nuts.");
    assertEquals("%% It's time to make the do-nuts.", second.message());
    assertEquals(OptionalInt.of(5), second.level());
  }

  /** RFC 3164 section 5.4, example 1. */
  @Test
  void exampleOfTheOldSyslogStandardIsRead() {
    LogLine line =
        only("<34>Oct 11 22:14:15 mymachine su: 'su root' failed for lonvick on /dev/pts/8");
    assertEquals("'su root' failed for lonvick on /dev/pts/8", line.message());
    assertEquals(OptionalInt.of(2), line.level());
    assertEquals("su", line.process());
  }

  /** PRI = facility * 8 + severity, RFC 5424 section 6.2.1, tables 1 and 2. */
  @Test
  void prioritiesAreTakenApartAsTheStandardSays() {
    assertEquals(20, Severity.facilityOfPriority(165));
    assertEquals(5, Severity.ofPriority(165));
    assertEquals(23, Severity.facilityOfPriority(191));
    assertEquals(7, Severity.ofPriority(191));
    assertEquals(4, Severity.facilityOfPriority(34));
    assertEquals(2, Severity.ofPriority(34));
    assertEquals(1, Severity.facilityOfPriority(13));
    assertEquals(5, Severity.ofPriority(13));
    assertEquals(3, Severity.facilityOfPriority(30));
    assertEquals(6, Severity.ofPriority(30));
  }

  /** Names of the levels: include/linux/kern_levels.h in the kernel's source. */
  @Test
  void levelWordsHaveTheKernelsNumbers() {
    List<String> words =
        List.of("emerg", "alert", "crit", "err", "warn", "notice", "info", "debug");
    for (int i = 0; i < words.size(); i++) {
      assertEquals(OptionalInt.of(i), Severity.ofWord(words.get(i)));
    }
  }

  @Test
  void stampsCutAtTheLeftEdgeAreTakenOff() {
    assertEquals("usb 1-1: new device", only("   3.123456] usb 1-1: new device").message());
    assertEquals("usb 1-1: new device", only("23456] usb 1-1: new device").message());
    assertEquals("usb 1-1: new device", only(".123456] usb 1-1: new device").message());
  }

  @Test
  void otherTimeFormatsOfTheKernelLogToolAreRead() {
    assertEquals(
        "smp: Bringing up", only("2026-11-25T10:00:00,123456+00:00 smp: Bringing up").message());
    says("[    0.104123 <    0.000012>] smp: Bringing up", "smp: Bringing up", 0.104123);
    List<LogLine> lines =
        lines("[Jan20 10:17] Linux version 6.1\n[  +0.500000] first\n[  +0.250000] second\n");
    assertEquals(OptionalDouble.of(0.5), lines.get(1).seconds());
    assertEquals(OptionalDouble.of(0.75), lines.get(2).seconds());
  }
}
