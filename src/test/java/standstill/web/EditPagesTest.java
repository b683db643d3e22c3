package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jgit.api.Git;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.account.Accounts;
import standstill.edit.TeamBase;

/** The pages for editing over HTTP, with a small base in a repository of its own. */
class EditPagesTest {
  private static final String FILE = TeamBase.ENTRY.path();

  @TempDir private static Path folder;
  private static TeamServer running;
  private static TeamBase team;
  private static String root;
  private static Maintainer ada;
  private static Maintainer bram;

  @BeforeAll
  static void start() throws Exception {
    running = TeamServer.start(folder);
    team = running.team();
    root = running.address();
    ada = new Maintainer(root);
    bram = new Maintainer(root);
    assertEquals(303, ada.signIn("ada", TeamServer.ADA).statusCode());
    assertEquals(303, bram.signIn("bram", TeamServer.BRAM).statusCode());
  }

  @AfterAll
  static void stop() throws Exception {
    running.close();
  }

  private static String open(Maintainer who) throws Exception {
    return who.page("/edit/entry?file=" + FILE);
  }

  /** Writes a text, sees what it does, puts it forward; gives the proposal's address. */
  private static String propose(Maintainer who, String page, String old, String other)
      throws Exception {
    Map<String, String> form = Maintainer.form(page);
    assertTrue(form.get("text").contains(old), form.get("text"));
    form.put("text", form.get("text").replace(old, other));
    form.put("do", "effect");
    String effect = who.sent("/edit/entry", form);
    String token = Maintainer.token(measured(who, effect));
    return who.sent(
        effect.replace("/effect", "/propose"),
        Map.of("token", token, "reason", "Counted on the bench."));
  }

  private static String measured(Maintainer who, String address) throws Exception {
    for (int i = 0; i < 300; i++) {
      String page = who.page(address);
      if (!page.contains("are being read and diagnosed")) {
        return page;
      }
      Thread.sleep(100);
    }
    throw new AssertionError("never measured");
  }

  private static HttpResponse<String> decide(Maintainer who, String change, String what)
      throws Exception {
    who.get(change + "/effect");
    for (int i = 0; i < 300 && who.get(change + "/effect").statusCode() != 303; i++) {
      Thread.sleep(100);
    }
    Map<String, String> form = Maintainer.form(who.page(change));
    form.put("reason", "Which boots?");
    return who.post(change + what, form);
  }

  @Test
  void withoutADeskThereIsNoAddressThatWrites() throws Exception {
    Javalin plain = Server.create(running.inUse());
    plain.start("127.0.0.1", 0);
    try {
      Maintainer anyone = new Maintainer("http://127.0.0.1:" + plain.port());
      for (String path :
          List.of(
              "/sign-in",
              "/changes",
              "/edit/files",
              "/edit/entry?file=" + FILE,
              "/edit/new",
              "/edit/boot",
              "/edit/draft/x",
              "/change/ada/root-id-on-no-disk-1",
              "/history?file=" + FILE)) {
        assertEquals(404, anyone.get(path).statusCode(), path);
      }
      for (String path :
          List.of(
              "/sign-in",
              "/sign-out",
              "/edit/entry",
              "/edit/check",
              "/edit/new",
              "/edit/boot",
              "/edit/draft/x/propose",
              "/change/ada/x-1/approve",
              "/change/ada/x-1/send-back",
              "/change/ada/x-1/take-back",
              "/change/ada/x-1/settle",
              "/change/ada/x-1/edit",
              "/history/restore")) {
        assertEquals(404, anyone.post(path, Map.of("token", "x")).statusCode(), path);
      }
      assertFalse(anyone.page("/").contains("/changes"));
      String fault = anyone.page("/fault/root-id-on-no-disk");
      assertFalse(fault.contains("/edit/"));
      assertTrue(fault.contains("Keep a small base <span class=\"tags\">carla, 2"), fault);
    } finally {
      plain.stop();
    }
  }

  @Test
  void whoeverIsNotSignedInGetsToTheDoorAndBack() throws Exception {
    Maintainer anyone = new Maintainer(root);
    HttpResponse<String> answer = anyone.get("/history?file=" + FILE);
    assertEquals(303, answer.statusCode());
    String to = answer.headers().firstValue("Location").orElseThrow();
    assertTrue(to.endsWith("/sign-in?to=%2Fhistory%3Ffile%3D" + FILE.replace("/", "%2F")), to);
    assertTrue(anyone.page(to.substring(to.indexOf("/sign-in"))).contains("/history?file=" + FILE));
    assertTrue(
        anyone.sent("/edit/entry", Map.of("file", FILE, "text", "x")).startsWith("/sign-in"));
    assertTrue(anyone.page("/fault/root-id-on-no-disk").contains("/edit/entry?file=" + FILE));
  }

  @Test
  void theDoorLeadsNowhereElse() {
    assertEquals("/changes", SignInPage.way("https://example.org/"));
    assertEquals("/changes", SignInPage.way("//example.org/"));
    assertEquals("/changes", SignInPage.way("/\\example.org/"));
    assertEquals("/changes", SignInPage.way("/x\r\nSet-Cookie: a=b"));
    assertEquals("/changes", SignInPage.way(null));
    assertEquals("/edit/new?line=3", SignInPage.way("/edit/new?line=3"));
  }

  @Test
  void theSessionsCookieIsForThisSiteAndNoScript() throws Exception {
    Maintainer anyone = new Maintainer(root);
    HttpResponse<String> answer = anyone.signIn("ada", TeamServer.ADA);
    String cookie =
        answer.headers().allValues("Set-Cookie").stream()
            .filter(c -> c.startsWith("standstill-session="))
            .findFirst()
            .orElseThrow();
    assertTrue(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), cookie);
    Map<String, String> out = Map.of("token", Maintainer.token(anyone.page("/changes")));
    anyone.sent("/sign-out", out);
    assertEquals(303, anyone.get("/changes").statusCode());
  }

  @Test
  void aFormWithoutItsTokenIsRefused() throws Exception {
    Map<String, String> form = Maintainer.form(open(ada));
    form.put("do", "check");
    for (String token : List.of("", "0".repeat(64), Maintainer.token(open(bram)))) {
      form.put("token", token);
      for (String path :
          List.of(
              "/edit/entry",
              "/edit/check",
              "/edit/new",
              "/edit/boot",
              "/sign-out",
              "/change/ada/x-1/approve",
              "/history/restore")) {
        assertEquals(403, ada.post(path, form).statusCode(), path);
      }
    }
    form.remove("token");
    assertEquals(403, ada.post("/edit/entry", form).statusCode());
    assertEquals(
        403,
        new Maintainer(root)
            .post("/sign-in", Map.of("name", "ada", "password", TeamServer.ADA))
            .statusCode());
  }

  @Test
  void guessingIsHeldUp() throws Exception {
    Javalin other =
        Server.create(
            running.inUse(),
            Optional.of(
                new EditDesk(
                    running.editing(),
                    Accounts.open(folder.resolve("accounts")),
                    Clock.systemUTC())));
    other.start("127.0.0.1", 0);
    try {
      Maintainer guesser = new Maintainer("http://127.0.0.1:" + other.port());
      for (int i = 0; i < 10; i++) {
        assertEquals(401, guesser.signIn("ada", "guess number " + i).statusCode());
      }
      HttpResponse<String> answer = guesser.signIn("ada", TeamServer.ADA);
      assertEquals(429, answer.statusCode());
      assertTrue(answer.headers().firstValue("Retry-After").isPresent());
    } finally {
      other.stop();
    }
  }

  @Test
  void whatOneProposesAnotherApprovesAndItIsInUse() throws Exception {
    String change =
        propose(
            ada,
            open(ada),
            "title: The root file system named at boot is on no disk",
            "title: The root named at boot is on no disk");
    String seen = ada.page(change);
    assertTrue(seen.contains("waits for a second person"), seen);
    assertFalse(seen.contains("/approve\""), "the author is offered to approve");
    assertEquals(409, decide(ada, change, "/approve").statusCode());
    assertEquals(303, decide(bram, change, "/approve").statusCode());
    assertTrue(bram.page(change).contains("in the base"));
    assertTrue(
        bram.page("/fault/root-id-on-no-disk").contains("The root named at boot is on no disk"));
    assertTrue(team.isClean());
    assertTrue(
        Files.readString(team.file()).contains("title: The root named at boot is on no disk"));

    String history = ada.page("/history?file=" + FILE);
    assertTrue(history.contains("Counted on the bench.") && history.contains("approved by bram"));
    String first = history.substring(history.lastIndexOf("version=") + 8).substring(0, 40);
    String version = ada.page("/history/text?file=" + FILE + "&version=" + first);
    Map<String, String> form = Maintainer.form(version);
    form.put("reason", "The longer title was better.");
    String back = ada.sent("/history/restore", form);
    assertEquals(303, decide(bram, back, "/approve").statusCode());
    assertTrue(
        Files.readString(team.file())
            .contains("title: The root file system named at boot is on no disk"));
  }

  @Test
  void twoAtOneEntryAtOnceLoseNothing() throws Exception {
    String adas = open(ada);
    String brams = open(bram);
    String one = propose(ada, adas, "minutes: 15", "minutes: 16");
    assertEquals(303, decide(bram, one, "/approve").statusCode());
    String other = propose(bram, brams, "minutes: 15", "minutes: 25");
    String seen = bram.page(other);
    assertTrue(seen.contains("Two changes in the same place"), seen);
    assertTrue(
        seen.contains("minutes: 15")
            && seen.contains("minutes: 16")
            && seen.contains("minutes: 25"));
    assertEquals(409, decide(ada, other, "/approve").statusCode());

    Map<String, String> form = Maintainer.form(seen.substring(seen.indexOf("/settle\"")));
    String marked = form.get("text");
    assertTrue(marked.contains("<<<<<<< in the base"), marked);
    form.put("reason", "Both, rounded.");
    HttpResponse<String> refused = bram.post(other + "/settle", form);
    assertEquals(409, refused.statusCode());
    assertTrue(refused.body().contains("&lt;&lt;&lt;&lt;&lt;&lt;&lt; in the base"));
    form.put("text", marked.replaceAll("(?s)<<<<<<<.*?>>>>>>> proposed", "    minutes: 20"));
    assertEquals(other, bram.sent(other + "/settle", form));
    assertEquals(303, decide(ada, other, "/approve").statusCode());
    assertTrue(Files.readString(team.file()).contains("minutes: 20"));
  }

  @Test
  void fieldsAreWrittenIntoTheTextAndCommentsStay() throws Exception {
    Map<String, String> form = Maintainer.form(open(ada));
    form.put("text", form.get("text").replace("part: root-fs", "part: root-fs  # kept"));
    form.put("f.how-common", "rarely");
    form.put("was.how-common", "very-often");
    form.put("do", "check");
    String page = ada.page(ada.sent("/edit/entry", form));
    String text = Maintainer.form(page).get("text");
    assertTrue(text.contains("how-common: rarely\n") && text.contains("# kept"), text);
    assertTrue(page.contains("The text has no problems"));
  }

  @Test
  void aFieldAndItsTextBothChangedAreBothShown() throws Exception {
    Map<String, String> form = Maintainer.form(open(ada));
    form.put("text", form.get("text").replace("how-common: very-often", "how-common: often"));
    form.put("f.how-common", "rarely");
    form.put("was.how-common", "very-often");
    form.put("do", "check");
    String page = ada.page(ada.sent("/edit/entry", form));
    assertTrue(page.contains("the field said: rarely"), page);
    assertTrue(Maintainer.form(page).get("text").contains("how-common: often"));
  }

  @Test
  void problemsStandWithTheirPlaceAndHostileTextIsShown() throws Exception {
    Map<String, String> form = Maintainer.form(open(ada));
    form.put(
        "text",
        form.get("text")
            .replace("how-common: very-often", "how-common: <script>alert(1)</script>")
            .replace("aliases: []", "aliases: ['</textarea><img src=x>']"));
    form.put("do", "check");
    String page = ada.page(ada.sent("/edit/entry", form));
    assertFalse(page.contains("<script>alert") || page.contains("<img"), page);
    assertTrue(page.contains("<strong>8:13</strong>"), page);
    assertTrue(page.contains("unknown word &#39;&lt;script&gt;alert(1)"), page);
    HttpResponse<String> live = ada.post("/edit/check", form);
    assertTrue(live.body().contains("\"place\":\"8:13\""), live.body());
    form.put("do", "effect");
    String effect = ada.page(ada.sent("/edit/entry", form));
    assertFalse(effect.contains("/propose"), "a text with errors can be proposed");
  }

  @Test
  void draftsAreTheirOwnersAlone() throws Exception {
    Map<String, String> form = Maintainer.form(open(ada));
    form.put("do", "check");
    String draft = ada.sent("/edit/entry", form).replaceFirst("#.*", "");
    assertEquals(200, ada.get(draft).statusCode());
    assertEquals(404, bram.get(draft).statusCode());
  }

  @Test
  void namesThatAreNoEntriesAreNotThere() throws Exception {
    for (String file :
        List.of(
            "../notes.txt",
            "faults/root/../../scale.yaml",
            "boots/x.yaml",
            "boots/x.log",
            "rates.yaml",
            "")) {
      String query = "?file=" + file.replace("/", "%2F");
      assertEquals(404, ada.get("/edit/entry" + query).statusCode(), file);
      assertEquals(404, ada.get("/history" + query).statusCode(), file);
    }
    assertEquals(404, ada.get("/change/ada/..%2F..%2Fmain").statusCode());
    Map<String, String> form = Maintainer.form(open(ada));
    form.put("file", "../notes.txt");
    assertEquals(404, ada.post("/edit/entry", form).statusCode());
    form.put("file", FILE);
    form.put("from", "f".repeat(40));
    assertEquals(400, ada.post("/edit/entry", form).statusCode());
  }

  @Test
  void fromAnUnsolvedLogToAMergedAndMeasuredFault() throws Exception {
    // Invented: no program prints the last line.
    String log =
        """
        [    0.000000] Linux version 6.1.0-18-amd64 (bench@lantern) #1 SMP
        [    0.400000] pci 0000:00:1f.2: [8086:2922] type 00 class 0x010601
        [    1.900000] lamplighter: error: wick 7 is wet, cannot light the root lamp at 192.168.7.31
        """;
    String report = ada.sent("/diagnose", Map.of("log", log));
    String page = ada.page(report);
    String link = page.substring(page.indexOf("/edit/new?log="));
    link = Maintainer.unescaped(link.substring(0, link.indexOf('"')));
    String fresh = ada.page(link);
    assertTrue(fresh.contains("wick 7 is wet"), fresh);
    assertFalse(fresh.contains("192.168.7.31"), "an address goes into the base");
    Map<String, String> form = new HashMap<>(Maintainer.form(fresh));
    form.put("line", "lamplighter: error: wick 7 is wet, cannot light the root lamp at 192.0.2.1");
    form.put("title", "The wick of the root lamp is wet");
    form.put("id", "root-lamp-wick-wet");
    form.put("stage", "root");
    form.put("part", "root-fs");
    form.put("family", "linux");
    form.put("do", "new");
    String draft = ada.sent("/edit/new", form);
    String editor = ada.page(draft);
    assertTrue(editor.contains("What is wrong with the text"), "an empty entry passes the check");
    assertTrue(editor.contains("faults/root/root-lamp-wick-wet.yaml"));

    Map<String, String> edit = Maintainer.form(editor);
    edit.put(
        "text",
        edit.get("text")
            .replace("about: ''", "about: The invented lamp of these tests does not burn.")
            .replace("symptoms: []", "symptoms: [shell-before-root]")
            .replace("unlike: []", "unlike: ['lamplighter: wick 7 is dry']")
            .replace("- id: ''\n    line", "- id: wick-is-wet\n    line")
            .replace(
                "- id: ''\n    title: ''\n    steps:\n      - ''",
                "- id: dry-it\n    title: Dry it\n    steps: ['Wait.']")
            .replace("prove: ''", "prove: It burns.")
            .replace("undo: ''", "undo: Nothing was changed.")
            .replace("prevent: ''", "prevent: Keep it dry.")
            .replace("says: ''", "says: The wick is wet"));
    edit.put("do", "check");
    String after = ada.page(ada.sent("/edit/entry", edit));
    assertTrue(after.contains("The text has no problems"), after);
    assertTrue(
        after.contains("With it") && after.contains("Its signs stand on these lines"), after);

    String change = propose(ada, after, "how-common: rarely", "how-common: hardly-ever");
    assertTrue(ada.page(change).contains("labelled boots"));
    assertEquals(303, decide(bram, change, "/approve").statusCode());
    assertTrue(ada.page(report).contains("The wick of the root lamp is wet"));
    assertTrue(team.isClean());
    assertTrue(
        ada.page("/history?file=faults/root/root-lamp-wick-wet.yaml").contains("approved by bram"));
    bootOf(report);
  }

  /** The log of the new fault is kept as a labelled boot, which measures it from then on. */
  private void bootOf(String report) throws Exception {
    String page = ada.page(report);
    String link = page.substring(page.indexOf("/edit/boot?log="));
    String fresh = ada.page(link.substring(0, link.indexOf('"')));
    String log = area(fresh);
    assertTrue(log.contains("wick 7 is wet"), log);
    assertFalse(log.contains("192.168.7.31"), "an address goes into the base");
    assertTrue(fresh.contains("serial numbers, addresses, and names"), fresh);
    Map<String, String> form = new HashMap<>(Maintainer.form(fresh));
    form.put("log", log);
    form.put("name", "lamp-wick-wet");
    form.put("label", "root-lamp-wick-wet");
    form.put("stage", "root");
    form.put("cut", "whole");
    form.put("made", "Invented for this test");
    form.put("licence", "CC0-1.0");
    form.put("do", "new");
    String editor = ada.page(ada.sent("/edit/boot", form).replaceFirst("#.*", ""));
    assertTrue(editor.contains("The text has no problems"), editor);
    String change = propose(ada, editor, "Invented for this test", "Invented for these tests");
    assertEquals(403, ada.post(change + "/approve", Map.of("token", "x")).statusCode());
    assertEquals(303, decide(bram, change, "/approve").statusCode());
    Path boots = team.folder().resolve("boots");
    assertEquals(log, Files.readString(boots.resolve("lamp-wick-wet.log")));
    assertTrue(
        Files.readString(boots.resolve("lamp-wick-wet.yaml"))
            .startsWith("log: lamp-wick-wet.log\nlabel: 'root-lamp-wick-wet'\n"));
    assertTrue(team.isClean());
    assertTrue(ada.page("/fault/root-lamp-wick-wet").contains("Invented for these tests"));
    try (Git git = team.git()) {
      String message = git.log().setMaxCount(1).call().iterator().next().getFullMessage();
      assertTrue(message.contains("Measured on 4 labelled boots"), message);
      assertTrue(
          message.contains(
              "The new boot lamp-wick-wet (root-lamp-wick-wet) comes out as: The wick of the root"
                  + " lamp is wet; right."),
          message);
    }
  }

  private static String area(String page) {
    String from = page.substring(page.indexOf("<textarea id=\"log\""));
    return Maintainer.unescaped(
        from.substring(from.indexOf(">\n") + 2, from.indexOf("</textarea>")));
  }

  @Test
  void aBootIsNamedMeasuredAndHostileLogsAreOnlyText() throws Exception {
    Map<String, String> form = new HashMap<>();
    form.put("token", Maintainer.token(ada.page("/edit/boot")));
    String log =
        "[    0.000000] Linux version 6.1.0 (lena@kiosk) #1 SMP\r\n"
            + "</textarea><script>alert(1)</script>\u0000\u0007\n=== the log ===\nlabel: healthy\n";
    form.put("log", log);
    form.put("name", "../x");
    form.put("label", "no-such-fault");
    form.put("stage", "root");
    form.put("cut", "whole");
    form.put("made", "it's 'quoted': yes");
    form.put("licence", "CC0-1.0");
    form.put("do", "new");
    String said = ada.post("/edit/boot", form).body();
    assertTrue(said.contains("lower-case words joined by hyphens, sixty"), said);
    assertFalse(said.contains("<script>alert"), said);
    form.put("name", "part-ext4-feature");
    assertTrue(
        ada.post("/edit/boot", form).body().contains("a labelled boot of this name already"));
    form.put("do", "disguise");
    assertFalse(area(ada.post("/edit/boot", form).body()).contains("kiosk"));
    form.put("do", "new");
    form.put("name", "hostile");
    String editor = ada.page(ada.sent("/edit/boot", form).replaceFirst("#.*", ""));
    assertTrue(editor.contains("unknown fault: &#39;no-such-fault&#39;"), editor);
    assertFalse(editor.contains("<script>alert"), editor);
    String text = Maintainer.form(editor).get("text");
    assertTrue(
        text.endsWith("</textarea><script>alert(1)</script>\n=== the log ===\nlabel: healthy\n"),
        text);
    Map<String, String> edit = Maintainer.form(editor);
    edit.put("do", "effect");
    assertFalse(ada.page(ada.sent("/edit/entry", edit)).contains("/propose"));
    String large = "[    0.000000] Linux version 6.1.0\n" + "[    1.000000] x\n".repeat(40_000);
    String report = ada.sent("/diagnose", Map.of("log", large));
    String fresh = ada.page("/edit/boot?log=" + report.replaceFirst(".*/", ""));
    assertTrue(fresh.contains("The log is longer than") && area(fresh).isEmpty());
    form.put("log", "x\n".repeat(300_000));
    assertTrue(ada.post("/edit/boot", form).body().contains("The log is longer than"));
  }
}
