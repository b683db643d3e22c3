package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import standstill.search.Search;
import standstill.store.BaseCopy;
import standstill.store.BaseInUse;
import standstill.store.Examples;

/**
 * Every page without editing can be used by everybody: checked by axe-core (Deque, 4.11), whose
 * rules follow the Web Content Accessibility Guidelines 2.2, in light and dark colours, on a wide
 * screen and a phone; and by the keyboard alone.
 */
class AccessIT {
  /** Large pages, which are checked only in two of the four ways. */
  private static final Set<String> LONG = Set.of("/handbook");

  @TempDir private static Path folder;
  private static BaseInUse inUse;
  private static Javalin server;
  private static String root;
  private static ChromeDriver browser;
  private static final List<String> PAGES = new ArrayList<>();

  @BeforeAll
  static void start() throws Exception {
    BaseCopy.into(folder);
    inUse = BaseInUse.of(folder, base -> Search.open(base, Optional.empty()));
    server = Server.create(inUse).start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
    browser = Browser.open(true);
    for (Examples.Example example : Examples.all()) {
      browser.get(root + "/?example=" + example.name());
      browser.findElement(By.cssSelector("form.paste button[type=submit]")).click();
      browser.findElement(By.cssSelector(".cause"));
      PAGES.add(browser.getCurrentUrl().substring(root.length()));
    }
    String log = PAGES.get(0);
    PAGES.addAll(
        List.of(
            "/",
            "/?example=memory-error",
            log + "?lines=proof",
            log + "/walk",
            log + "/walk?check.list-disks-in-rescue-shell=disk-there-id-differs",
            log + "/walk/tree",
            log + "/walk/summary",
            "/walk",
            "/walk?stage=root",
            "/walk?begun=yes&stage=root&sees=shell-before-root",
            "/walks/no-picture-after-power-on",
            "/search",
            "/search?q=black+screen+after+the+menu",
            "/search?q=hibernaton&kind=fault",
            "/search?q=qqqq",
            "/faults",
            "/faults?stage=root&part=disk&risk=settings&repair=data",
            "/faults?stage=no-such-stage",
            "/fault/root-id-on-no-disk",
            "/fault/machine-check-cpu",
            "/check/list-disks-in-rescue-shell",
            "/symptom/shell-before-root",
            "/trails",
            "/handbook",
            "/getting-a-log",
            "/base",
            "/base/check",
            "/no-such-page"));
  }

  @AfterAll
  static void stop() {
    browser.quit();
    server.stop();
    inUse.close();
  }

  @Test
  void theCheckFindsWhatBarsPeople() {
    browser.get(root + "/trails");
    browser.executeScript(
        "document.body.insertAdjacentHTML('beforeend', '<button></button><img src=\"/files/icon.svg\">')");
    assertEquals(
        2, Axe.grave(browser).size(), "a button without a name and a picture without words");
  }

  @ParameterizedTest
  @CsvSource({"1280, light", "1280, dark", "390, light", "390, dark"})
  void noPageBarsAnybody(int width, String scheme) throws Exception {
    Browser.show(browser, width, scheme);
    Path pictures = Files.createDirectories(Path.of("target", "screenshots", width + "-" + scheme));
    List<String> wrong = new ArrayList<>();
    for (String page : PAGES) {
      if (LONG.contains(page) && (width == 1280) != scheme.equals("light")) {
        continue;
      }
      browser.get(root + page);
      Axe.grave(browser).forEach(finding -> wrong.add(page + " " + finding));
      Axe.wide(browser).forEach(finding -> wrong.add(page + " " + finding));
      String name = page.replaceFirst("/log/[0-9a-f]+", "/log").replaceAll("[^a-z0-9]+", "-");
      Files.write(
          pictures.resolve(PAGES.indexOf(page) + name + ".png"),
          browser.getScreenshotAs(OutputType.BYTES));
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void theNoteOnARefusedBaseBarsNobodyEither() throws Exception {
    Path entry = folder.resolve("faults/root/root-id-on-no-disk.yaml");
    String sound = Files.readString(entry);
    try {
      Files.writeString(entry, sound.replace("how-common: ", "how-common: ofen # "));
      assertTrue(inUse.reload().refused().isPresent());
      for (String scheme : List.of("light", "dark")) {
        Browser.show(browser, 390, scheme);
        browser.get(root + "/faults");
        browser.findElement(By.cssSelector(".notice a")).click();
        assertTrue(browser.findElement(By.tagName("main")).getText().contains("ofen"));
        assertEquals(List.of(), Axe.grave(browser), scheme);
        assertEquals(List.of(), Axe.wide(browser), scheme);
      }
    } finally {
      Files.writeString(entry, sound);
      inUse.reload();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "/search?q=no+bootable+device",
    "/faults?stage=firmware",
    "/symptom/shell-before-root",
    "/fault/root-id-on-no-disk",
    "/walk?begun=yes&stage=root&sees=shell-before-root",
  })
  void everythingIsReachedByTheKeyboard(String page) {
    Browser.show(browser, 1280, "light");
    browser.get(root + page);
    Number all =
        (Number)
            browser.executeScript(
                """
                const all = [...document.querySelectorAll('a[href], button, input, textarea, summary')]
                    .filter(e => e.type !== 'hidden' && e.checkVisibility());
                all.forEach((e, i) => e.dataset.place = i);
                return all.length;
                """);
    Set<Object> reached = new LinkedHashSet<>();
    for (int i = 0; i < all.intValue() + 20 && reached.size() < all.intValue(); i++) {
      WebElement at = browser.switchTo().activeElement();
      at.sendKeys(Keys.TAB);
      Object place =
          browser.executeScript(
              """
              const e = document.activeElement;
              const ring = getComputedStyle(e);
              return e.dataset.place === undefined ? null
                  : ring.outlineStyle === 'none' ? 'without a ring: ' + e.outerHTML : e.dataset.place;
              """);
      if (place != null) {
        reached.add(place);
      }
    }
    assertEquals(List.of(), reached.stream().filter(p -> p.toString().startsWith("w")).toList());
    assertEquals(all.intValue(), reached.size(), page);
  }

  @ParameterizedTest
  @CsvSource({"true", "false"})
  void searchAndFacetsAreUsedWithAndWithoutScript(boolean withScript) {
    ChromeDriver with = withScript ? browser : Browser.open(false);
    try {
      with.get(root + "/");
      with.findElement(By.linkText("Search")).click();
      with.findElement(By.id("q")).sendKeys("nvme disk not detected", Keys.ENTER);
      WebElement first = with.findElement(By.cssSelector(".found > li a"));
      String title = first.getText();
      first.click();
      assertEquals(title, with.findElement(By.tagName("h1")).getText());
      with.findElement(By.linkText("Browse")).click();
      int all = with.findElements(By.cssSelector(".listed .links > li")).size();
      with.findElement(By.linkText("root")).click();
      with.findElement(By.linkText("Begin anew"));
      int root = with.findElements(By.cssSelector(".listed .links > li")).size();
      WebElement part = with.findElement(By.xpath("//summary[text()='Part']"));
      part.sendKeys(Keys.ENTER);
      WebElement value = part.findElement(By.xpath("../ul/li[1]"));
      int count = Integer.parseInt(value.findElement(By.className("tags")).getText());
      value.findElement(By.tagName("a")).click();
      assertEquals(2, with.findElements(By.cssSelector("a.chosen")).size());
      assertEquals(count, with.findElements(By.cssSelector(".listed .links > li")).size());
      assertTrue(count < root && root < all, count + " of " + root + " of " + all);
      with.findElement(By.cssSelector("a.chosen")).click();
      assertEquals(1, with.findElements(By.cssSelector("a.chosen")).size());
    } finally {
      if (!withScript) {
        with.quit();
      }
    }
  }
}
