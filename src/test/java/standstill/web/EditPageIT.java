package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import standstill.edit.TeamBase;

/** Two maintainers in two browsers, one of which runs no script: propose, approve, restore. */
class EditPageIT {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @TempDir private static Path folder;
  private static TeamServer running;
  private static TeamBase team;
  private static String home;
  private static ChromeDriver ada;
  private static ChromeDriver bram;

  @BeforeAll
  static void start() throws Exception {
    running = TeamServer.start(folder);
    team = running.team();
    home = running.address();
    ada = Browser.open(true);
    bram = Browser.open(false);
    signIn(ada, "ada", TeamServer.ADA);
    signIn(bram, "bram", TeamServer.BRAM);
  }

  @AfterAll
  static void stop() throws Exception {
    ada.quit();
    bram.quit();
    running.close();
  }

  private static void signIn(ChromeDriver browser, String name, String password) {
    browser.get(home + "/changes");
    browser.findElement(By.id("name")).sendKeys(name);
    browser.findElement(By.id("password")).sendKeys(password);
    browser.findElement(By.cssSelector("form.plain button")).click();
    browser.findElement(By.cssSelector("form.signed-in"));
  }

  private static WebElement wait(ChromeDriver browser, By what) {
    return new WebDriverWait(browser, PATIENCE)
        .until(ExpectedConditions.presenceOfElementLocated(what));
  }

  /**
   * Pictures at both widths; nothing but a box that scrolls by itself may be wider than the window.
   */
  private static void look(ChromeDriver browser, String name) throws Exception {
    Path pictures = Files.createDirectories(Path.of("target", "screenshots"));
    for (boolean dark : List.of(false, true)) {
      browser.executeCdpCommand(
          "Emulation.setEmulatedMedia",
          Map.of(
              "features",
              List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
      for (int width : dark ? List.of(1280) : List.of(1280, 390)) {
        browser.manage().window().setSize(new Dimension(width, 1700));
        Files.write(
            pictures.resolve(name + "-" + width + (dark ? "-dark" : "") + ".png"),
            browser.getScreenshotAs(OutputType.BYTES));
        Number wide = (Number) browser.executeScript("return document.documentElement.scrollWidth");
        Number window = (Number) browser.executeScript("return window.innerWidth");
        assertTrue(wide.intValue() <= window.intValue(), name + " is wider than " + width);
      }
    }
    browser.manage().window().setSize(new Dimension(1280, 1700));
  }

  private static void click(ChromeDriver browser, By what) {
    WebElement element = browser.findElement(what);
    browser.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  @Test
  void proposeApproveAndRestore() throws Exception {
    ada.get(home + "/fault/root-id-on-no-disk");
    ada.findElement(By.linkText("Edit this entry")).click();
    assertTrue(ada.findElement(By.tagName("h1")).getText().contains("root-id-on-no-disk"));

    // The script checks while one types.
    WebElement text = ada.findElement(By.id("text"));
    text.sendKeys("nonsense: 1\n");
    new WebDriverWait(ada, PATIENCE)
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("problems"), "unknown key 'nonsense'"));
    look(ada, "edit-problems");
    ada.navigate().refresh();
    WebElement title = ada.findElement(By.id("f.title"));
    title.clear();
    title.sendKeys("The root named at boot is on no disk");
    new Select(ada.findElement(By.id("f.how-common"))).selectByVisibleText("often");
    click(ada, By.cssSelector("button[value=effect]"));
    WebElement reason = wait(ada, By.id("reason"));
    look(ada, "edit-effect");
    reason.sendKeys("Shorter, and counted on the bench.");
    click(ada, By.cssSelector("form.plain button"));
    assertTrue(
        wait(ada, By.cssSelector(".standing-line"))
            .getText()
            .contains("waits for a second person"));
    assertEquals(0, ada.findElements(By.cssSelector("form[action$='/approve']")).size());
    look(ada, "edit-proposal-own");
    String change = ada.getCurrentUrl();

    bram.get(home + "/changes");
    bram.findElement(By.linkText("root-id-on-no-disk")).click();
    assertTrue(bram.getPageSource().contains("The root named at boot is on no disk"));
    bram.findElement(By.cssSelector("form[action$='/approve'] button")).click();
    assertTrue(
        wait(bram, By.cssSelector(".standing-line.merged")).getText().contains("in the base"));
    bram.get(home + "/fault/root-id-on-no-disk");
    assertEquals(
        "The root named at boot is on no disk", bram.findElement(By.tagName("h1")).getText());
    assertTrue(Files.readString(team.file()).contains("how-common: often"));

    ada.get(change);
    look(ada, "edit-merged");
    ada.findElement(By.linkText("History of the entry")).click();
    look(ada, "edit-history");
    List<WebElement> versions = ada.findElements(By.cssSelector(".versions > li > a"));
    versions.get(versions.size() - 1).click();
    look(ada, "edit-version");
    ada.findElement(By.id("reason")).sendKeys("The longer title says more.");
    click(ada, By.cssSelector("form[action='/history/restore'] button"));
    String restore = ada.getCurrentUrl();

    bram.get(restore);
    // A text that was measured before needs no asking.
    bram.findElements(By.linkText("Have it measured")).stream()
        .findFirst()
        .ifPresent(WebElement::click);
    wait(bram, By.cssSelector("form[action$='/approve'] button"));
    bram.findElement(By.cssSelector("form[action$='/approve'] button")).click();
    wait(bram, By.cssSelector(".standing-line.merged"));
    bram.get(home + "/fault/root-id-on-no-disk");
    assertEquals(
        "The root file system named at boot is on no disk",
        bram.findElement(By.tagName("h1")).getText());
    assertTrue(team.isClean());
    ada.get(home + "/changes");
    look(ada, "edit-changes");
    ada.get(home + "/edit/new");
    look(ada, "edit-new");
  }

  @Test
  void aConflictShowsThreeTextsSideBySide() throws Exception {
    var seen = running.editing().proposals().current(TeamBase.ENTRY);
    var one =
        running
            .editing()
            .proposals()
            .propose(
                "bram",
                TeamBase.ENTRY,
                seen.commit(),
                seen.text().replace("minutes: 15", "minutes: 16"),
                "Timed.");
    running.editing().proposals().approve("ada", one.id(), one.tip(), "");
    var other =
        running
            .editing()
            .proposals()
            .propose(
                "ada",
                TeamBase.ENTRY,
                seen.commit(),
                seen.text().replace("minutes: 15", "minutes: 25"),
                "Timed too.");
    ada.get(home + "/change/" + other.id());
    assertEquals(3, ada.findElements(By.cssSelector(".three section")).size());
    for (String minutes : List.of("minutes: 15", "minutes: 16", "minutes: 25")) {
      assertTrue(ada.findElement(By.cssSelector(".three")).getText().contains(minutes), minutes);
    }
    look(ada, "edit-conflict");
    running.editing().proposals().takeBack("ada", other.id(), other.tip());
  }
}
