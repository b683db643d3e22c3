package standstill.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.store.BaseFolder;

/** The picture of a machine, on lines as the kernel prints them; the machine is invented. */
class PictureTest {
  private static final Diagnoser DIAGNOSER = diagnoser();
  private static final String LOG =
      """
      [    0.000000] Linux version 6.1.0-18-amd64 (lantern@bench) #1 SMP
      [    0.000000] Command line: BOOT_IMAGE=/vmlinuz root=UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 ro
      [    0.100000] Memory: 260916K/1048052K available (14343K kernel code)
      [    1.690950] pci 0000:00:02.0: [8086:0046] type 00 class 0x030000
      [    1.733114] pci 0000:00:1f.2: [8086:2922] type 00 class 0x010601
      [    7.989944] Run /init as init process
      Loading, please wait...
      Begin: Waiting for root file system ... done.
      Gave up waiting for root file system device.  Common problems:
      ALERT!  UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 does not exist.  Dropping to a shell!
      (initramfs)
      """;

  private static Diagnoser diagnoser() {
    try {
      return new Diagnoser(BaseFolder.read(Path.of("kb")).base());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Picture picture(String log) {
    return Picture.of(DIAGNOSER.diagnose(log).diagnosis().orElseThrow().machine().orElseThrow());
  }

  private static List<Picture.Note> notes(Picture picture, String part) {
    return picture.parts().stream()
        .filter(p -> p.title().equals(part))
        .flatMap(p -> p.notes().stream())
        .toList();
  }

  @Test
  void theSummaryNamesTheControllerTheDisksAndTheRoot() {
    assertEquals(
        "SATA controller 0000:00:1f.2: no driver; disks: none; root wanted:"
            + " UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21",
        picture(LOG).summary());
  }

  @Test
  void aDeviceIsSaidInWordsWithItsNumbersAndItsLine() {
    Picture.Note controller = notes(picture(LOG), "Controllers").get(0);
    assertEquals("SATA controller 0000:00:1f.2 (8086:2922): no driver", controller.text());
    assertEquals(List.of(5), controller.lines());
    assertTrue(controller.trouble());
  }

  @Test
  void aGraphicsDeviceHasTimeForItsDriverUntilTheInstalledSystemRuns() {
    Picture.Note graphics = notes(picture(LOG), "Graphics and network").get(0);
    assertEquals(
        "graphics device 0000:00:02.0 (8086:0046): no driver has spoken yet", graphics.text());
    assertFalse(graphics.trouble());
  }

  @Test
  void anExcerptSaysThatItDoesNotTellOfDisks() {
    String excerpt = LOG.substring(LOG.indexOf("Begin:"));
    assertEquals(
        "disks: the paste doesn't tell; root wanted: UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21",
        picture(excerpt).summary());
  }

  @Test
  void theReportsJsonHoldsTheMachine() {
    JsonNode machine = JsonReport.toNode(DIAGNOSER.diagnose(LOG), 3).get("machine");
    assertEquals(picture(LOG).summary(), machine.get("summary").asText());
    assertTrue(machine.get("facts").findValuesAsText("id").contains("no-disk-at-all"));
    JsonNode controller = machine.get("things").get(1);
    assertEquals("controller", controller.get("sort").asText());
    assertTrue(controller.get("withoutDriver").asBoolean());
    assertEquals(5, controller.get("lines").get(0).asInt());
  }
}
