package standstill.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * What bars people from the page that a browser shows, as axe-core (Deque, 4.11) finds it, whose
 * rules follow the Web Content Accessibility Guidelines 2.2.
 */
final class Axe {
  private Axe() {}

  /** What axe finds grave. */
  static List<String> grave(ChromeDriver browser) {
    browser.executeScript(script());
    Object found =
        browser.executeAsyncScript(
            """
            const done = arguments[arguments.length - 1];
            axe.run(document, {resultTypes: ['violations']}).then(
                r => done(r.violations
                    .filter(v => v.impact === 'serious' || v.impact === 'critical')
                    .map(v => v.id + ': ' + v.nodes.length + ' × ' + v.nodes[0].html.slice(0, 200)
                        + ' ' + v.nodes[0].failureSummary)),
                e => done(['axe: ' + e]));
            """);
    List<String> all = new ArrayList<>();
    ((List<?>) found).forEach(each -> all.add(each.toString()));
    return all;
  }

  private static String script() {
    try (InputStream in = Axe.class.getResourceAsStream("/axe.min.js")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** Whether the page is wider than its window. */
  static List<String> wide(ChromeDriver browser) {
    Number page = (Number) browser.executeScript("return document.documentElement.scrollWidth");
    Number window = (Number) browser.executeScript("return window.innerWidth");
    return page.intValue() > window.intValue()
        ? List.of("the page is " + page + " wide in a window of " + window)
        : List.of();
  }
}
