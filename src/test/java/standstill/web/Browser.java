package standstill.web;

import java.time.Duration;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** Starts a real browser without a window. */
final class Browser {
  private Browser() {}

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
    made.manage().timeouts().scriptTimeout(Duration.ofSeconds(120));
    return made;
  }

  /** Shows the following pages at a width, in light or dark colours. */
  static void show(ChromeDriver browser, int width, String scheme) {
    browser.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", 900, "deviceScaleFactor", 1, "mobile", false));
    browser.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "features",
            java.util.List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }
}
