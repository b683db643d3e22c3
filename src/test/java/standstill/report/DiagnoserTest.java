package standstill.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import standstill.base.Stage;
import standstill.store.BaseFolder;
import standstill.trace.Trace;

/** Texts of an invented bench, with wordings of systemd and the kernel. */
class DiagnoserTest {
  private final Diagnoser diagnoser;

  DiagnoserTest() throws IOException {
    diagnoser = new Diagnoser(BaseFolder.builtIn().base());
  }

  private Trace trace(String text) {
    return diagnoser.sight(diagnoser.read(text.getBytes()), 0).orElseThrow().trace();
  }

  private static String kernelLines(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> String.format(Locale.ROOT, "[%5d.000000] usb 1-%d: new device", i, i))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  @Test
  void textTypedInSmallLettersMeansTheSame() {
    String text =
        """
        [ TIME ] Timed out waiting for device dev-disk-by\\x2duuid-0b6e1f0a.device.
        [DEPEND] Dependency failed for /data.
        [DEPEND] Dependency failed for Local File Systems.
        You are in emergency mode. After logging in, type "journalctl -xb" to view
        """;
    Report asPrinted = diagnoser.diagnose(text);
    Report typed = diagnoser.diagnose(text.toLowerCase(Locale.ROOT));
    assertEquals("stalled", typed.verdict());
    assertEquals(first(asPrinted), first(typed));
    assertEquals(Stage.USERLAND, typed.diagnosis().orElseThrow().trace().stage());
  }

  private static String first(Report report) {
    return report.diagnosis().orElseThrow().ranking().top().orElseThrow().fault().id();
  }

  @Test
  void aLongTextOfKernelLinesAloneWasReadOut() {
    assertTrue(trace(kernelLines(200)).readOut());
    assertFalse(trace(kernelLines(199)).readOut());
    assertFalse(
        trace(kernelLines(200) + "Begin: Running /scripts/local-premount ... done.\n").readOut());
    assertFalse(trace(kernelLines(200).replace("] usb", "] bench kernel: usb")).readOut());
  }
}
