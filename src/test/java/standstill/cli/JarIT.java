package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Starts the packed program as a person would. */
class JarIT {
  @TempDir private Path folder;

  record Ended(int code, String out, String err) {
    JsonNode json() throws IOException {
      return new ObjectMapper().readTree(out);
    }
  }

  private static Ended run(byte[] input, String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-jar");
    command.add(System.getProperty("standstill.jar", "target/standstill.jar"));
    command.addAll(List.of(arguments));
    Path err = Files.createTempFile("standstill", ".err");
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(err.toFile());
    builder.environment().put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    Thread feeder =
        new Thread(
            () -> {
              try (var to = process.getOutputStream()) {
                to.write(input);
              } catch (IOException e) {
                // The program may end before it has read everything; its exit code tells.
              }
            });
    feeder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it hangs");
    String said = Files.readString(err);
    Files.delete(err);
    return new Ended(process.exitValue(), out, said);
  }

  private static Ended run(String... arguments) throws Exception {
    return run(new byte[0], arguments);
  }

  // The status be00000000010091 ends in the compound code 0x0091: a read error of the memory
  // controller, channel 1 (Intel SDM vol. 3B, chapter "Machine-Check Architecture").
  @ParameterizedTest
  @CsvSource({
    "no-boot-device,  firmware, no-loader-on-any-disk",
    "missing-kernel,  loader,   kernel-file-missing",
    "memory-error,    kernel,   machine-check-memory",
    "disk-timeout,    devices,  nvme-times-out",
    "wrong-root-id,   root,     root-id-on-no-disk",
    "emergency-mode,  userland, mount-unit-device-missing",
  })
  void theExamplesGetTheirCause(String name, String stage, String cause) throws Exception {
    JsonNode report = run("diagnose", "--json", "docs/examples/" + name + ".log").json();
    assertEquals("stalled", report.at("/verdict").asText());
    assertEquals(stage, report.at("/trace/stage").asText());
    assertEquals(cause, report.at("/causes/0/id").asText());
    assertFalse(report.at("/causes/0/for/0/lines").isEmpty());
    assertFalse(report.at("/causes/0/fixes/0/steps").isEmpty());
  }

  @Test
  void theReportFitsEightyColumnsAndHasNoColoursInAPipe() throws Exception {
    Ended ended = run("diagnose", "docs/examples/wrong-root-id.log");
    assertEquals(0, ended.code());
    assertFalse(ended.out().contains("\u001b"));
    ended.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
    assertTrue(ended.out().contains("[root]"));
  }

  @Test
  void aLogComesInOverStandardInputAndCompressed() throws Exception {
    byte[] plain = Files.readAllBytes(Path.of("docs/examples/missing-kernel.log"));
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write(plain);
    }
    Path file = folder.resolve("boot.log.gz");
    Files.write(file, packed.toByteArray());
    String fromPipe = run(plain, "diagnose", "--json", "-").out();
    assertEquals(fromPipe, run("diagnose", "--json", file.toString()).out());
    assertEquals(
        "kernel-file-missing", new ObjectMapper().readTree(fromPipe).at("/causes/0/id").asText());
  }

  @Test
  void theLastScreenfulStillGetsItsCause() throws Exception {
    List<String> lines = Files.readAllLines(Path.of("docs/examples/wrong-root-id.log"));
    String end = String.join("\n", lines.subList(lines.size() - 12, lines.size()));
    JsonNode report = run(end.getBytes(StandardCharsets.UTF_8), "diagnose", "--json", "-").json();
    assertEquals("root-id-on-no-disk", report.at("/causes/0/id").asText());
  }

  @Test
  void aBareExcerptOfFiveLinesStillGetsItsCause() throws Exception {
    // Wordings of drivers/usb/core/hub.c, Linux 6.1; the excerpt is invented.
    String excerpt =
        """
        usb 1-4: new full-speed USB device number 3 using xhci_hcd
        usb 1-4: device descriptor read/64, error -71
        usb 1-4: device descriptor read/64, error -71
        usb 1-4: device not accepting address 4, error -71
        usb usb1-port4: unable to enumerate USB device
        """;
    JsonNode report =
        run(excerpt.getBytes(StandardCharsets.UTF_8), "diagnose", "--json", "-").json();
    assertEquals("usb-descriptor-errors", report.at("/causes/0/id").asText());
  }

  @Test
  void aCauseThatIsNotInTheBaseIsSaidToBeSo() throws Exception {
    // Invented: no program prints these.
    String odd =
        """
        [    0.000000] Linux version 6.1.0-18-amd64 (bench@lantern) #1 SMP
        [    0.400000] pci 0000:00:1f.2: [8086:2922] type 00 class 0x010601
        [    1.000000] lamplighter 0000:03:00.0: wick is wet, waiting for the sun
        """;
    JsonNode report = run(odd.getBytes(StandardCharsets.UTF_8), "diagnose", "--json", "-").json();
    assertEquals("unlisted", report.at("/verdict").asText());
  }

  @Test
  void randomBytesAreNoBootLog() throws Exception {
    long seed = System.nanoTime();
    byte[] noise = new byte[50_000];
    new Random(seed).nextBytes(noise);
    Ended ended = run(noise, "diagnose", "--json", "-");
    assertEquals(0, ended.code(), "seed " + seed);
    assertEquals("not-a-boot-log", ended.json().at("/verdict").asText(), "seed " + seed);
  }

  @Test
  void exitCodesSayWhatWentWrong() throws Exception {
    assertEquals(2, run("diagnose", "--no-such-option").code());
    assertEquals(2, run("diagnose", "--boot", "9", "docs/examples/wrong-root-id.log").code());
    Ended missing = run("diagnose", folder.resolve("nothing.log").toString());
    assertEquals(3, missing.code());
    assertTrue(missing.err().contains("no file"), missing.err());
    Ended noBase = run("diagnose", "--base", folder.toString(), "docs/examples/wrong-root-id.log");
    assertEquals(4, noBase.code());
    assertTrue(noBase.err().contains("scale.yaml"), noBase.err());
    assertEquals(0, run("check", "kb").code());
    assertEquals(0, run("--help").code());
  }
}
