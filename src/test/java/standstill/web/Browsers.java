package standstill.web;

import java.time.Duration;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** Opens real browsers for tests. */
final class Browsers {
  private Browsers() {}

  /** A browser that runs scripts, or does not. */
  static ChromeDriver open(boolean withScript) {
    System.setProperty(
        "webdriver.chrome.driver", System.getProperty("chromedriver", "/usr/bin/chromedriver"));
    ChromeOptions options = new ChromeOptions();
    options.setBinary(System.getProperty("chromium", "/usr/bin/chromium"));
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--hide-scrollbars",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run");
    if (!withScript) {
      options.setExperimentalOption(
          "prefs", Map.of("profile.managed_default_content_settings.javascript", 2));
    }
    ChromeDriver made =
        new ChromeDriver(new ChromeDriverService.Builder().usingAnyFreePort().build(), options);
    made.manage().timeouts().implicitlyWait(Duration.ofSeconds(10));
    return made;
  }
}
