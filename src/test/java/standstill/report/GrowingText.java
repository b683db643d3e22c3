package standstill.report;

import java.util.Locale;
import java.util.function.IntFunction;

/**
 * Texts of any length that ask much of whoever reads them.
 *
 * <p>Each is one shape over and over, with running numbers where repetition would be noticed. The
 * first few made earlier readers hang.
 */
enum GrowingText {
  FIRMWARE_BANNERS(i -> "American Megatrends Inc. BIOS " + i + "\n"),
  JOURNAL_SEPARATORS(
      i -> "-- Boot " + Integer.toHexString(i) + " --\n", "[    0.1] Linux version 6.1\n"),
  CURSOR_COLUMNS(i -> "\u001b[999Gx\r"),
  COLUMNS_ON_MANY_LINES(i -> "\u001b[999Gx" + i % 10 + "\n"),
  CURSOR_PLACES(
      i -> "\u001b[" + (i * 7 % 100 + 1) + ";" + (i * 13 % 400 + 1) + "H" + (char) ('a' + i % 26)),
  CURSOR_CORNERS(
      i -> "\u001b[100;399H" + (char) ('a' + i % 26) + "\u001b[1;1H" + i % 10 + "\u001b[0J"),
  ERASED_CELLS(i -> "\u001b[99999X") {
    @Override
    String ofLength(int length) {
      return "x".repeat(length / 2) + "\u001b[1G" + super.ofLength(length / 2);
    }
  },
  DELETED_CELLS(i -> i % 2 == 0 ? "y" : "\u001b[1G\u001b[1P"),
  SCROLLED_SCREEN(i -> "\u001b[99;1Hline " + i + "\n\n\n"),
  CONTROL_STRINGS(i -> "\u0090"),
  PRINTED_CONTROL_STRINGS(i -> "\u001b]x"),
  UPDATES_OF_A_LINE(i -> "fsck " + i + "%\r"),
  WAITING_JOBS(
      i -> "[*** ] A start job is running for unit-" + i + " (" + i % 60 + "s / 1min 30s)\n"),
  WAITING_JOBS_IN_TURN(
      i -> "[*** ] A start job is running for unit (" + i + "s)\n" + i + " done\n") {
    @Override
    String ofLength(int length) {
      return WAITING_JOBS.ofLength(length / 2) + super.ofLength(length / 2);
    }
  },
  ENTITIES(i -> "&"),
  TAGS(i -> "<p "),
  FORUM_TAGS(i -> "[code="),
  COLOUR_DEBRIS(i -> "[1;"),
  BRACKETS(i -> "["),
  STAMPS(i -> String.format(Locale.ROOT, "[%12.6f] ", i / 1e3)),
  LONG_NUMBERS(i -> "[1", "Linux version 6.1\n"),
  OPEN_OBJECTS(i -> "{\n"),
  OBJECTS_WITHOUT_A_MESSAGE(i -> i % 150 == 149 ? "}\n" : "{\n"),
  JOURNAL_ENTRIES(
      i ->
          "{\"MESSAGE\":\"usb 1-1: device "
              + i
              + "\",\"_BOOT_ID\":\""
              + i % 7
              + "\","
              + "\"SYSLOG_IDENTIFIER\":\"kernel\",\"__MONOTONIC_TIMESTAMP\":\""
              + i
              + "\"}\n"),
  COLUMNS_IN_JOURNAL_ENTRIES(i -> "{\"MESSAGE\":\"\\u001b[999Gx\"}\n"),
  ONE_JOURNAL_ENTRY_OF_MANY_LINES() {
    @Override
    String ofLength(int length) {
      return "{\"SYSLOG_IDENTIFIER\":\""
          + "t".repeat(length / 2)
          + "\",\"MESSAGE\":\""
          + "x\\n".repeat(length / 6)
          + "\"}";
    }
  },
  QUOTE_MARKS(i -> "> "),
  LINE_NUMBERS(i -> i + 1 + ": [    1.234567] usb\n"),
  WRAPPED_LINES(i -> wrapped(i)),
  ONE_WRAPPED_LINE(
      i -> "w".repeat(79) + (i % 10) + "\n",
      "[    0.000001] Linux version 6.1"
          + "w".repeat(48)
          + "\n[    0.000002] Linux command"
          + "w".repeat(52)
          + "\n"),
  CLOCK_FALLS_BACK(
      i -> String.format(Locale.ROOT, "[%12.6f] step %d\n", i % 2 == 0 ? 100 + i % 9 : 0.1, i)),
  CLOCK_AT_ZERO(i -> String.format(Locale.ROOT, "[%12.6f] step %d\n", i % 2 == 0 ? 100.0 : 0.0, i)),
  BOOTS_AFTER_MANY_BANNERS(
      i -> "[    0.000000] Linux version 6.1." + i + "\n[    9.000000] usb\n") {
    @Override
    String ofLength(int length) {
      return FIRMWARE_BANNERS.ofLength(length / 2) + super.ofLength(length / 2);
    }
  },
  CLEARED_SCREENS(i -> "\u001b[2JSeaBIOS (version " + i + ")\nBooting from Hard Disk...\n"),
  KERNEL_STARTS(i -> "Linux version 6." + i + "\n"),
  LOADER_STARTS(i -> "Welcome to GRUB!\nline " + i + "\n"),
  KERNEL_LINES(
      i -> String.format(Locale.ROOT, "[%12.6f] usb 1-%d: new device %x\n", i / 1e3, i, i * 7919)),
  SYSLOG_LINES(
      i ->
          String.format(
              Locale.ROOT,
              "Nov 25 10:%02d:%02d bench prog%d[%d]: text\n",
              i / 60 % 60,
              i % 60,
              i,
              i)),
  DISK_ERRORS(
      i ->
          String.format(
              Locale.ROOT,
              "[%12.6f] blk_update_request: I/O error, dev sda, sector %d\n",
              i / 1e3,
              i)),
  FAILED_UNITS(
      i ->
          "[FAILED] Failed to start unit-"
              + i
              + ".service - Thing.\n[DEPEND] Dependency failed for t"
              + i
              + ".\n"),
  PANICS(
      i ->
          "Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,"
              + i
              + ")\n"),
  TRACES(i -> String.format(Locale.ROOT, "[%12.6f]  func_%x+0x44/0x5c\n", i / 1e3, i)),
  ONE_LONG_LINE(i -> "error " + i + " "),
  SCREEN_OF_ROWS_DRAWN_ANEW(i -> "\u001b[5;1Hpart " + i + "\u001b[6;1Hother\u001b[K");

  private final IntFunction<String> part;
  private final String before;

  GrowingText() {
    this(i -> "");
  }

  GrowingText(IntFunction<String> part) {
    this(part, "");
  }

  GrowingText(IntFunction<String> part, String before) {
    this.part = part;
    this.before = before;
  }

  /** The text, about so many characters long. */
  String ofLength(int length) {
    StringBuilder text = new StringBuilder(length + 100).append(before);
    for (int i = 0; text.length() < length; i++) {
      text.append(part.apply(i));
    }
    return text.toString();
  }

  private static String wrapped(int i) {
    String line =
        String.format(Locale.ROOT, "[%12.6f] usb 1-%d: %s", i / 1e3, i, "word".repeat(30));
    return line.substring(0, 80) + "\n" + line.substring(80, 110) + "\n";
  }
}
