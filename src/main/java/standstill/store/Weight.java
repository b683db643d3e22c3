package standstill.store;

import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.match.Hit;
import standstill.match.SeenTrail;
import standstill.rank.Cause;
import standstill.report.Evidence;
import standstill.report.Report;

/**
 * How many bytes a report holds in memory, its text and what was found in it, counted from above:
 * what two places share counts twice. Sizes of objects are those of a 64-bit Java machine with
 * compressed references.
 */
final class Weight {
  private static final int STRING = 24 + 16;
  private static final int REFERENCE = 8;
  private static final int LINE = 48 + 2 * 24 + REFERENCE;
  private static final int BOOT = 96;
  private static final int REPORT = 64 << 10;

  private Weight() {}

  static long of(Report report) {
    long bytes = REPORT + of(report.log());
    if (report.diagnosis().isPresent()) {
      Report.Diagnosis diagnosis = report.diagnosis().get();
      for (Cause cause : diagnosis.ranking().causes()) {
        for (Evidence evidence : Evidence.reasonsFor(cause)) {
          bytes += of(evidence.text());
        }
      }
      for (SeenTrail trail : diagnosis.trails()) {
        for (Hit hit : trail.hits()) {
          bytes += of(hit.text());
        }
      }
    }
    return bytes;
  }

  static long of(BootLog log) {
    long bytes = of(log.rawLines());
    for (Boot boot : log.boots()) {
      bytes += BOOT;
      for (LogLine line : boot.lines()) {
        bytes += LINE + of(line.text()) + of(line.message()) + of(line.process());
      }
    }
    return bytes;
  }

  private static long of(Iterable<String> texts) {
    long bytes = 0;
    for (String text : texts) {
      bytes += REFERENCE + of(text);
    }
    return bytes;
  }

  /** A text with any character above U+00FF takes two bytes for each. */
  private static long of(String text) {
    if (text.isEmpty()) {
      return 0;
    }
    int wide = 1;
    for (int i = 0; i < text.length() && wide == 1; i++) {
      wide = text.charAt(i) > 0xff ? 2 : 1;
    }
    return STRING + (long) wide * text.length();
  }
}
