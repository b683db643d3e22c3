package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import standstill.store.BaseFolder;
import standstill.store.BaseInUse;

/** The page in a real browser, as a person uses it, and the screenshots that the README shows. */
class PageIT {
  private static Javalin server;
  private static String home;
  private static ChromeDriver browser;

  @BeforeAll
  static void start() throws Exception {
    server = Server.create(BaseInUse.fixed(BaseFolder.builtIn().base()));
    server.start("127.0.0.1", 0);
    home = "http://127.0.0.1:" + server.port();
    browser = Browser.open(true);
  }

  @AfterAll
  static void stop() {
    browser.quit();
    server.stop();
  }

  private static void paste(ChromeDriver with, String example) {
    with.get(home + "/?example=" + example);
    with.findElement(By.cssSelector("form.paste button[type=submit]")).click();
    with.findElement(By.cssSelector(".cause"));
  }

  @Test
  void aPastedLogShowsItsCauseAndTheLineThatProvesIt() throws Exception {
    paste(browser, "wrong-root-id");
    WebElement first = browser.findElement(By.id("cause-1"));
    assertTrue(
        first.findElement(By.tagName("h3")).getText().contains("on no disk"), first.getText());
    WebElement proof = first.findElement(By.cssSelector(".proof a"));
    String target = proof.getDomAttribute("href");
    proof.click();
    WebElement line = browser.findElement(By.cssSelector(target));
    // The command line that names the identifier comes first; it is on no disk.
    assertTrue(line.getText().contains("root=UUID="), line.getText());
    line.findElement(By.cssSelector("a.back")).click();
    assertTrue(browser.getCurrentUrl().endsWith("#cause-1"));
    for (int width : List.of(1280, 390)) {
      screenshot(width);
    }
  }

  private static void screenshot(int width) throws Exception {
    browser.manage().window().setSize(new Dimension(width, 1700));
    browser.executeScript("window.scrollTo(0, 0)");
    Path folder = Files.createDirectories(Path.of("target", "screenshots"));
    Files.write(
        folder.resolve("report-" + width + ".png"), browser.getScreenshotAs(OutputType.BYTES));
    Number wide = (Number) browser.executeScript("return document.documentElement.scrollWidth");
    Number window = (Number) browser.executeScript("return window.innerWidth");
    assertTrue(
        wide.intValue() <= window.intValue(), "the page is wider than the window at " + width);
  }

  @Test
  void onlyProofLinesAreShownWhenAsked() {
    paste(browser, "disk-timeout");
    int all = browser.findElements(By.cssSelector("ol.log > li")).size();
    browser.findElement(By.linkText("Proof lines only")).click();
    browser.findElement(By.linkText("All lines"));
    int few = browser.findElements(By.cssSelector("ol.log > li")).size();
    assertTrue(few > 0 && few < all, few + " of " + all);
    assertEquals(few, browser.findElements(By.cssSelector("ol.log > li.proves")).size());
  }

  @Test
  void everythingWorksWithoutScript() {
    ChromeDriver plain = Browser.open(false);
    try {
      paste(plain, "emergency-mode");
      assertTrue(
          plain.findElement(By.tagName("h1")).getText().contains("emergency or rescue mode"));
      plain.findElement(By.cssSelector("form.forget button")).click();
      plain.findElement(By.id("log"));
    } finally {
      plain.quit();
    }
  }

  @Test
  void markupInALogIsShownAndNotObeyed() {
    browser.get(home);
    browser
        .findElement(By.id("log"))
        .sendKeys(
            "ALERT! UUID=<img src=x onerror=alert(1)>&amp does not exist. Dropping to a shell!\n"
                + "(initramfs) ");
    browser.findElement(By.cssSelector("form.paste button[type=submit]")).click();
    browser.findElement(By.cssSelector("ol.log"));
    assertEquals(0, browser.findElements(By.cssSelector("main img")).size());
    assertTrue(browser.findElement(By.cssSelector("ol.log")).getText().contains("<img"));
  }

  private static HttpResponse<String> post(String type, byte[] body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(home + "/api/diagnose"))
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body))
            .build();
    return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void theApiGivesTheSameReport() throws Exception {
    byte[] log = Files.readAllBytes(Path.of("docs/examples/memory-error.log"));
    HttpResponse<String> plain = post("text/plain", log);
    assertEquals(200, plain.statusCode());
    assertTrue(
        plain.body().contains("\"id\" : \"machine-check-memory\""), plain.body().substring(0, 500));
    String frame =
        "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"x.log\"\r\n\r\n"
            + new String(log, java.nio.charset.StandardCharsets.UTF_8)
            + "\r\n--b--\r\n";
    HttpResponse<String> form =
        post(
            "multipart/form-data; boundary=b",
            frame.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    assertEquals(200, form.statusCode());
    assertTrue(form.body().contains("\"id\" : \"machine-check-memory\""));
  }

  @Test
  void aLogThatIsTooLargeIsRefusedInClearWords() throws Exception {
    HttpResponse<String> answer = post("text/plain", new byte[Server.LARGEST_LOG + 1]);
    assertEquals(413, answer.statusCode());
    assertTrue(answer.body().contains("20 MB"), answer.body());
  }

  @Test
  void everyAnswerCarriesTheSecurityHeaders() throws Exception {
    for (String path : List.of("/", "/nothing", "/files/standstill.css")) {
      HttpResponse<String> answer =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create(home + path)).build(),
                  HttpResponse.BodyHandlers.ofString());
      String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
      assertTrue(
          policy.contains("script-src 'self'") && !policy.contains("unsafe"), path + ": " + policy);
      assertEquals("nosniff", answer.headers().firstValue("X-Content-Type-Options").orElse(""));
      assertFalse(answer.body().contains("<script>"), path);
    }
  }
}
