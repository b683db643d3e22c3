package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import standstill.report.Diagnoser;
import standstill.store.BaseFolder;

class ReportViewCodesTest {
  @Test
  void piecesOfALineAreTheLine() throws Exception {
    String log =
        """
        [    0.000000] Linux version 6.1.0-18-amd64
        [    1.000000] <b>foo</b> failed with error -5 "quoted"
        [    2.000000] VFS: Cannot open root device "sda1" or unknown-block(8,1): error -6
        [    2.100000] Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(8,1)
        """;
    Diagnoser diagnoser = new Diagnoser(BaseFolder.builtIn().base());
    ReportView view = ReportView.of(diagnoser.base(), diagnoser.diagnose(log), "address", false);
    for (ReportView.LineView line : view.lines()) {
      StringBuilder joined = new StringBuilder();
      for (ReportView.PartView part : line.parts()) {
        joined.append(part.text());
        if (part.code() > 0) {
          assertEquals(view.codes().get(part.code() - 1).code(), part.text());
        }
      }
      assertEquals(line.text(), joined.toString());
    }
    assertTrue(
        view.codes().stream()
            .anyMatch(c -> c.code().equals("8,1") && c.meaning().contains("sda1")));
  }
}
