package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class DecoderTest {
  @Test
  void aCodeAloneHasAllItsReadings() {
    assertTrue(
        Decoder.explainCode("12").stream()
            .map(Meaning::kind)
            .collect(Collectors.toSet())
            .containsAll(
                List.of(Kind.ERRNO_LINUX, Kind.SIGNAL, Kind.EXCEPTION, Kind.XHCI_COMPLETION)));
  }

  @Test
  void codesStandInOrderAndDoNotOverlap() {
    String line =
        "<3>VFS: Cannot open root device \"sda1\" or unknown-block(8,1): error -6, SIGKILL";
    List<Meaning> all = Decoder.explain(line);
    assertEquals(List.of("3", "8,1", "-6", "SIGKILL"), all.stream().map(Meaning::code).toList());
    for (int i = 1; i < all.size(); i++) {
      assertTrue(all.get(i).start() >= all.get(i - 1).end());
    }
  }

  @Test
  void plainWordsHaveNoCode() {
    assertEquals(List.of(), Decoder.explain("Reached target Basic System."));
    assertEquals(List.of(), Decoder.explainCode("hello"));
    assertEquals(List.of(), Decoder.explainCode(""));
    assertEquals(List.of(), Decoder.explain(""));
  }

  @Test
  void everyKindStandsInTheReference() throws Exception {
    String reference = Files.readString(Path.of("docs/reference/json.md"));
    for (Kind kind : Kind.values()) {
      assertTrue(
          reference.contains("| `" + kind.word() + "` | " + kind.title() + " |"), kind.word());
    }
  }

  /** Any text gets an answer: numbers too long, cut, or at the edges must not fail. */
  @Test
  void anyTextIsTaken() {
    long seed = 20_260_101;
    Random random = new Random(seed);
    List<String> pieces =
        List.of(
            "error -",
            "0x",
            "ffffffffffffffffffff",
            "9",
            "unknown-block(",
            ",",
            ")",
            "exitcode=",
            "Bank 4: ",
            "Machine Check: ",
            "status=",
            "code=exited, ",
            "/",
            "Tainted: G",
            " W",
            "class ",
            "0000:00:1f.2",
            "sct 0x2 / sc 0x",
            "CSTS=",
            "SIG",
            "AE_",
            "EFI_",
            "<",
            ">",
            "usb 1-1: ",
            "-9223372036854775808",
            "trap ",
            "Fatal ",
            "signal ",
            "SStatus ",
            "\u0000",
            "res 51/",
            "+3-0.conf",
            "errno = ",
            "cannot mount root, ");
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(8); n >= 0; n--) {
        text.append(pieces.get(random.nextInt(pieces.size())));
      }
      String line = text.toString();
      for (Meaning m : Decoder.explain(line)) {
        assertEquals(line.substring(m.start(), m.end()), m.code(), "seed " + seed + ": " + line);
      }
      Decoder.explainCode(line);
    }
  }
}
