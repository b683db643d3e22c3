package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said when something small is wrong. */
class SmallFailuresTest {
  @TempDir private Path folder;

  /** 192.0.2.1 is kept for documentation and no machine has it (RFC 5737); .invalid: RFC 2606. */
  @ParameterizedTest
  @CsvSource({
    "192.0.2.1, is not an address of this machine",
    "lantern.invalid, is no address and no name that this machine knows",
  })
  void aWrongHostIsNotReportedAsATakenPort(String host, String said) {
    CommandRun run = CommandRun.of("serve", "--host", host, "--port", "0");
    assertEquals(ExitCode.USAGE, run.code());
    assertTrue(run.err().contains("--host " + host + " " + said), run.err());
  }

  @Test
  void aTakenPortIsReportedAsOne() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String port = String.valueOf(taken.getLocalPort());
      CommandRun run = CommandRun.of("serve", "--port", port);
      assertEquals(ExitCode.UNREADABLE, run.code());
      assertTrue(run.err().contains("port " + port + " on 127.0.0.1 is taken"), run.err());
    }
  }

  @Test
  void aDamagedGzipIsDiagnosedAsFarAsItGoesAndSaidToBeDamaged() throws Exception {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write(Files.readAllBytes(Path.of("docs/examples/wrong-root-id.log")));
    }
    byte[] whole = packed.toByteArray();
    Path log = Files.write(folder.resolve("boot.log.gz"), whole);
    assertEquals("", CommandRun.of("diagnose", log.toString()).err());
    Files.write(log, Arrays.copyOf(whole, whole.length - 4));
    CommandRun run = CommandRun.of("diagnose", "--json", log.toString());
    assertEquals(0, run.code());
    assertTrue(run.out().contains("\"root-id-on-no-disk\""), run.out());
    assertTrue(
        run.err().startsWith("Caution: " + log + " is a damaged gzip file, or was cut short"),
        run.err());
  }
}
