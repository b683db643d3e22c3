package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import standstill.edit.EntryName;
import standstill.edit.Proposal;
import standstill.edit.Proposals;
import standstill.edit.TeamBase;

/**
 * The pages for editing can be used by everybody, as {@link AccessIT} sees to it for the others.
 */
class EditAccessIT {
  private static final String FILE = TeamBase.ENTRY.path();

  /** Invented: no program prints the last line. */
  private static final String LOG =
      """
      [    0.000000] Linux version 6.1.0-18-amd64 (bench@lantern) #1 SMP
      [    0.400000] pci 0000:00:1f.2: [8086:2922] type 00 class 0x010601
      [    1.900000] lamplighter: error: wick 7 is wet, cannot light the root lamp
      """;

  @TempDir private static Path folder;
  private static TeamServer running;
  private static String root;
  private static Maintainer ada;
  private static ChromeDriver browser;

  /** Address by the name of its picture. */
  private static final Map<String, String> PAGES = new LinkedHashMap<>();

  @BeforeAll
  static void start() throws Exception {
    running = TeamServer.start(folder);
    root = running.address();
    ada = new Maintainer(root);
    assertEquals(303, ada.signIn("ada", TeamServer.ADA).statusCode());
    browser = Browser.open(true);
    browser.get(root + "/changes");
    assertEquals(List.of(), Axe.grave(browser), "the door");
    browser.findElement(By.id("name")).sendKeys("ada");
    browser.findElement(By.id("password")).sendKeys(TeamServer.ADA);
    browser.findElement(By.cssSelector("form.plain button")).click();
    browser.findElement(By.cssSelector("form.signed-in"));
    String report = ada.sent("/diagnose", Map.of("log", LOG));
    PAGES.put("entry", "/edit/entry?file=" + FILE);
    PAGES.put("draft-with-problems", draft("how-common: very-often", "how-common: ofen"));
    PAGES.put("draft-tried", tried());
    String draft = draft("title: The root file system", "title: A root file system");
    measured(draft + "/effect");
    PAGES.put("effect", draft + "/effect");
    PAGES.put("effect-with-errors", PAGES.get("draft-with-problems") + "/effect");
    PAGES.put("report", report);
    PAGES.put("new-entry", "/edit/new?log=" + report.replaceFirst(".*/", "") + "&line=3");
    PAGES.put("new-boot", "/edit/boot?log=" + report.replaceFirst(".*/", ""));
    String boot = boot();
    measured(boot + "/effect");
    PAGES.put("draft-of-a-boot", boot);
    PAGES.put("effect-of-a-boot", boot + "/effect");
    changes();
    PAGES.put("changes", "/changes");
    PAGES.put("files", "/edit/files");
    PAGES.put("history", "/history?file=" + FILE);
    String commit = running.editing().proposals().history(TeamBase.ENTRY).get(1).commit();
    PAGES.put("version", "/history/text?file=" + FILE + "&version=" + commit);
    PAGES.put("fault", "/fault/" + TeamBase.ENTRY.id());
    PAGES.put("nothing", "/change/ada/no-such-change-1");
  }

  @AfterAll
  static void stop() throws Exception {
    browser.quit();
    running.close();
  }

  private static String draft(String old, String other) throws Exception {
    Map<String, String> form = Maintainer.form(ada.page("/edit/entry?file=" + FILE));
    assertTrue(form.get("text").contains(old), old);
    form.put("text", form.get("text").replace(old, other));
    form.put("do", "check");
    return ada.sent("/edit/entry", form).replaceFirst("#.*", "");
  }

  private static String tried() throws Exception {
    Map<String, String> form = Maintainer.form(ada.page("/edit/entry?file=" + FILE));
    form.put("log", LOG);
    form.put("do", "try");
    return ada.sent("/edit/entry", form).replaceFirst("#.*", "");
  }

  private static String boot() throws Exception {
    Map<String, String> form = new HashMap<>();
    form.put("token", Maintainer.token(ada.page("/edit/boot")));
    form.putAll(Map.of("log", LOG, "name", "lamp-wick-wet", "label", "unlisted"));
    form.putAll(Map.of("stage", "root", "cut", "whole", "made", "Invented", "licence", "CC0-1.0"));
    form.put("do", "new");
    return ada.sent("/edit/boot", form).replaceFirst("#.*", "");
  }

  private static void measured(String effect) throws Exception {
    for (int i = 0; i < 600; i++) {
      if (!ada.page(effect).contains("are being read and diagnosed")) {
        return;
      }
      Thread.sleep(100);
    }
    throw new AssertionError("never measured");
  }

  /** One change that waits, one that clashes with one that was approved, one that was sent back. */
  private static void changes() throws Exception {
    Proposals proposals = running.editing().proposals();
    Proposals.Current now = proposals.current(TeamBase.ENTRY);
    Proposal first = propose("ada", TeamBase.ENTRY, now, "minutes: 15", "minutes: 16");
    Proposal clash = propose("ada", TeamBase.ENTRY, now, "minutes: 15", "minutes: 25");
    proposals.approve("bram", first.id(), first.tip(), "");
    EntryName other = new EntryName("faults/root/root-argument-missing.yaml");
    Proposal waits = propose("bram", other, proposals.current(other), "title: ", "title: Surely ");
    Proposal back = propose("ada", other, proposals.current(other), "title: ", "title: Well, ");
    proposals.sendBack("bram", back.id(), back.tip(), "Which boots?");
    Maintainer reader = new Maintainer(root);
    assertEquals(303, reader.signIn("bram", TeamServer.BRAM).statusCode());
    for (int i = 0;
        i < 600 && reader.get("/change/" + waits.id() + "/effect").statusCode() != 303;
        i++) {
      Thread.sleep(100);
    }
    PAGES.put("change-merged", "/change/" + first.id());
    PAGES.put("change-that-clashes", "/change/" + clash.id());
    PAGES.put("change-of-another", "/change/" + waits.id());
    PAGES.put("change-sent-back", "/change/" + back.id());
  }

  private static Proposal propose(
      String who, EntryName entry, Proposals.Current from, String old, String other)
      throws Exception {
    assertTrue(from.text().contains(old), old);
    return running
        .editing()
        .proposals()
        .propose(who, entry, from.commit(), from.text().replaceFirst(old, other), "Counted it.");
  }

  @ParameterizedTest
  @CsvSource({"1280, light", "1280, dark", "390, light", "390, dark"})
  void noPageForEditingBarsAnybody(int width, String scheme) throws Exception {
    Browser.show(browser, width, scheme);
    Path pictures = Files.createDirectories(Path.of("target", "screenshots", width + "-" + scheme));
    List<String> wrong = new ArrayList<>();
    for (Map.Entry<String, String> page : PAGES.entrySet()) {
      browser.get(root + page.getValue());
      assertFalse(browser.getTitle().startsWith("Sign in"), page.getKey());
      Axe.grave(browser).forEach(finding -> wrong.add(page.getKey() + " " + finding));
      Axe.wide(browser).forEach(finding -> wrong.add(page.getKey() + " " + finding));
      Files.write(
          pictures.resolve("edit-" + page.getKey() + ".png"),
          browser.getScreenshotAs(OutputType.BYTES));
    }
    assertEquals(List.of(), wrong);
  }
}
