package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.store.BaseFolder;
import standstill.store.BaseInUse;

/** Logs as they are sent, over HTTP. */
class UploadTest {
  private static final String FORM = "application/x-www-form-urlencoded";

  private static Javalin server;
  private static String root;
  private static byte[] log;

  @BeforeAll
  static void start() throws Exception {
    server = Server.create(BaseInUse.fixed(BaseFolder.builtIn().base())).start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
    log = Files.readAllBytes(Path.of("docs/examples/wrong-root-id.log"));
  }

  @AfterAll
  static void stop() {
    server.stop();
  }

  private static HttpResponse<String> post(String path, String type, byte[] body) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(root + path))
            .POST(HttpRequest.BodyPublishers.ofByteArray(body));
    if (!type.isEmpty()) {
      request.header("Content-Type", type);
    }
    return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private static String page(String address) throws Exception {
    HttpResponse<String> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(root + address)).build(),
                HttpResponse.BodyHandlers.ofString());
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  private static byte[] compressed(byte[] bytes) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(bytes);
    }
    return out.toByteArray();
  }

  @Test
  void theBodyIsTheLogWhateverItIsCalled() throws Exception {
    // curl --data-binary names any body a form; other programs give it no type at all.
    for (String type : new String[] {FORM, "", "text/plain", "application/octet-stream"}) {
      HttpResponse<String> answer = post("/api/diagnose", type, log);
      assertEquals(200, answer.statusCode(), type + answer.body());
      assertTrue(answer.body().contains("\"verdict\" : \"stalled\""), type + answer.body());
      HttpResponse<String> gzip = post("/api/diagnose", type, compressed(log));
      assertEquals(answer.body(), gzip.body(), type);
    }
    assertEquals(303, post("/diagnose", FORM, log).statusCode());
  }

  @Test
  void aFormIsStillAForm() throws Exception {
    String text = new String(log, StandardCharsets.UTF_8);
    String first = post("/api/diagnose", "text/plain", log).body();
    for (String body :
        new String[] {
          "log=" + URLEncoder.encode(text, StandardCharsets.UTF_8),
          "other=1&log=" + URLEncoder.encode(text, StandardCharsets.UTF_8)
        }) {
      HttpResponse<String> answer =
          post("/api/diagnose", FORM, body.getBytes(StandardCharsets.UTF_8));
      assertEquals(first, answer.body());
    }
    HttpResponse<String> empty = post("/diagnose", FORM, "log=".getBytes(StandardCharsets.UTF_8));
    assertEquals(400, empty.statusCode());
    assertTrue(empty.body().contains("There was no text"), empty.body());
  }

  @Test
  void aSmallFileThatExpandsAThousandTimesIsRefusedWithTheWayOut() throws Exception {
    byte[] bomb = compressed(new byte[16 << 20]);
    assertTrue(bomb.length < 20_000, bomb.length + " bytes");
    HttpResponse<String> answer = post("/api/diagnose", "application/gzip", bomb);
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("Expand it and send the text"), answer.body());
    StringBuilder spinner = new StringBuilder();
    for (int i = 0; i < 20_000; i++) {
      spinner.append("[  *** ] A start job is running for the lamp (" + i + "s / no limit)\r");
    }
    byte[] tedious = spinner.toString().getBytes(StandardCharsets.UTF_8);
    assertEquals(200, post("/api/diagnose", "application/gzip", compressed(tedious)).statusCode());
  }

  @Test
  void aLogOfMillionsOfLinesIsRefusedInClearWords() throws Exception {
    byte[] lines = "\n".repeat(Upload.MOST_LINES + 1).getBytes(StandardCharsets.UTF_8);
    HttpResponse<String> answer = post("/api/diagnose", "text/plain", lines);
    assertEquals(413, answer.statusCode());
    assertTrue(answer.body().contains("1000000 lines"), answer.body());
  }

  @Test
  void aLogOfManyBootsMakesNoPageOfAllTheirNumbers() throws Exception {
    String boot =
        "[    0.000000] Linux version 6.1.0-18-amd64 (bench@lantern) #1 SMP\n[    0.1] x\n";
    byte[] many = boot.repeat(3_000).getBytes(StandardCharsets.UTF_8);
    String address =
        post("/diagnose", "text/plain", many)
            .headers()
            .firstValue("Location")
            .orElseThrow()
            .replaceFirst("^https?://[^/]+", "");
    String page = page(address);
    assertTrue(page.contains("3000 starts of the machine"), page);
    assertTrue(page.length() < 20_000, page.length() + " characters");
    assertTrue(page.contains("max=\"500\""), page);
    String middle = page(address + "?boot=250");
    for (int near : new int[] {1, 249, 251, 500}) {
      assertTrue(middle.contains("?boot=" + near + "\""), middle);
    }
    assertFalse(middle.contains("?boot=200\""));
  }
}
