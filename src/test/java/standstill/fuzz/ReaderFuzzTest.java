package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.Gunzip;
import standstill.log.LogLine;
import standstill.log.TooLargeException;
import standstill.report.Diagnoser;
import standstill.report.JsonReport;
import standstill.store.BaseFolder;

/** Any bytes make a report, and its lines are lines of the text. */
class ReaderFuzzTest {
  private static final Diagnoser DIAGNOSER = diagnoser();

  private static Diagnoser diagnoser() {
    try {
      return new Diagnoser(BaseFolder.builtIn().base());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @FuzzTest(maxDuration = "5m")
  void bytesMakeAReport(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentBytesMakeAReport() {
    Bent.inputs(getClass(), "bytesMakeAReport", 150, ReaderFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    byte[] expanded;
    try {
      expanded = Gunzip.expand(bytes, 1_000_000);
    } catch (TooLargeException e) {
      return;
    }
    BootLog log = DIAGNOSER.read(expanded);
    assertEquals(log.lineCount(), log.rawLines().size());
    int before = 1;
    for (Boot boot : log.boots()) {
      for (LogLine line : boot.lines()) {
        assertTrue(line.number() >= before && line.number() <= line.lastNumber(), line.toString());
        assertTrue(line.lastNumber() <= log.lineCount(), line.toString());
        assertTrue(line.text().chars().noneMatch(c -> c < ' ' || c == 0x7f), line.toString());
        before = line.number();
      }
    }
    for (int boot = 0; boot <= Math.min(log.boots().size(), 3); boot++) {
      assertTrue(JsonReport.write(DIAGNOSER.diagnose(log, boot), 5).startsWith("{"));
    }
  }
}
