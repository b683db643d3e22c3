package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import standstill.base.Walk;
import standstill.guide.Guide;
import standstill.rank.Ranking;
import standstill.report.Diagnoser;
import standstill.store.BaseFolder;
import standstill.store.BaseInUse;

/** The walk's pages over HTTP, with the base that the program carries. */
class WalkPagesTest {
  private static final Pattern REPLY =
      Pattern.compile("<ul class=\"replies\">(.*?)</ul>", Pattern.DOTALL);
  private static final Pattern HREF = Pattern.compile("href=\"([^\"]+)\"");
  private static final Pattern RANKING =
      Pattern.compile("<ol class=\"ranking\">(.*?)</ol>", Pattern.DOTALL);

  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Javalin server;
  private static String root;
  private static Diagnoser diagnoser;
  private static String log;

  @BeforeAll
  static void start() throws Exception {
    diagnoser = new Diagnoser(BaseFolder.builtIn().base());
    server = Server.create(BaseInUse.fixed(diagnoser.base()));
    server.start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
    log = paste(Files.readString(Path.of("docs/examples/wrong-root-id.log")));
  }

  @AfterAll
  static void stop() {
    server.stop();
  }

  private static String paste(String text) throws Exception {
    HttpResponse<String> answer =
        CLIENT.send(
            HttpRequest.newBuilder(URI.create(root + "/diagnose"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(
                    HttpRequest.BodyPublishers.ofString(
                        "log=" + URLEncoder.encode(text, StandardCharsets.UTF_8)))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    assertEquals(303, answer.statusCode());
    return answer.headers().firstValue("Location").orElseThrow();
  }

  private static HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return CLIENT.send(
        HttpRequest.newBuilder(URI.create(root + path)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private static String page(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer = get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body();
  }

  @Test
  void theCheckOfTheBaseHasAPageThatAnswersAtOnce() throws Exception {
    assertTrue(page("/base/check").contains("<h1>Check of the base</h1>"));
  }

  private static List<String> replies(String page) {
    List<String> links = new ArrayList<>();
    Matcher list = REPLY.matcher(page);
    while (list.find()) {
      Matcher href = HREF.matcher(list.group(1));
      while (href.find()) {
        links.add(href.group(1).replace("&amp;", "&"));
      }
    }
    return links;
  }

  private static String ranking(String page) {
    Matcher matcher = RANKING.matcher(page);
    assertTrue(matcher.find());
    return matcher
        .group(1)
        .replaceAll("<span class=\"change\".*?</span>", "")
        .replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/walk",
        "/walk?stage=firmware",
        "/walk?stage=",
        "/walk?begun=yes&stage=root&sees=shell-before-root",
        "/walk/tree?begun=yes&stage=root&depth=5",
        "/walk/summary?begun=yes&stage=root",
        "/getting-a-log",
        "/walks/no-picture-after-power-on",
      })
  void everyPageRenders(String path) throws Exception {
    String page = page(path);
    assertTrue(page.contains("<h1"), path);
    assertFalse(page.contains("style="), path);
    assertFalse(page.matches("(?s).*<script(?! src=).*"), path);
  }

  @Test
  void everyStageLeadsToAStepWithinThreeAnswers() throws Exception {
    for (String stage : replies(page("/walk"))) {
      String symptoms = page(stage);
      assertTrue(symptoms.contains("name=\"sees\""), stage);
      String step = page(stage.replace("?", "?begun=yes&"));
      assertTrue(step.contains("id=\"step\""), stage);
    }
  }

  @Test
  void everyAnswerLeadsSomewhere() throws Exception {
    // Two causes are about as likely, so there is much to ask.
    String unsure = paste(Files.readString(Path.of("docs/examples/missing-kernel.log")));
    Deque<String> open = new ArrayDeque<>(List.of(unsure + "/walk"));
    Set<String> seen = new HashSet<>(open);
    int visited = 0;
    while (!open.isEmpty() && visited < 60) {
      String page = page(open.removeFirst());
      visited++;
      List<String> next = replies(page);
      boolean end =
          page.contains("class=\"step cured\"")
              || page.contains("class=\"step over\"") && !page.contains("Try one of these?");
      assertEquals(end, next.isEmpty());
      for (String href : next) {
        assertFalse(href.contains("vmlinuz"), "no text of the log stands in an address");
        if (seen.add(href)) {
          open.addLast(href);
        }
      }
    }
    assertTrue(visited > 30, "only " + visited + " pages");
  }

  @Test
  void takingAnAnswerBackRestoresTheRanking() throws Exception {
    String first = page(log + "/walk");
    for (String href : replies(first)) {
      String answered = page(href);
      Matcher back = Pattern.compile("href=\"([^\"]+)\">take back").matcher(answered);
      assertTrue(back.find(), href);
      assertEquals(ranking(first), ranking(page(back.group(1).replace("&amp;", "&"))), href);
    }
  }

  @Test
  void anAnswerChangesTheRankingAndSaysByHowMuch() throws Exception {
    String answered = page(log + "/walk?check.list-disks-in-rescue-shell=disk-there-id-same");
    assertTrue(answered.contains("class=\"change\""));
    assertTrue(answered.contains("The root file system named at boot is on no disk"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/walk?stage=attic",
        "/walk?colour=red",
        "/walk?begun=yes&sees=smoke",
        "/walk?begun=yes&lacks=patience",
        "/walk?begun=yes&before=a/fix/1",
        "/walk?begun=yes&check.nothing=yes",
        "/walk?begun=yes&check.list-disks-in-rescue-shell=maybe",
        "/walk?begun=yes&check.list-disks-in-rescue-shell=unknown&check.list-disks-in-rescue-shell=skip",
        "/walk?begun=yes&fix.root-id-on-no-disk/fix/99=helped",
        "/walk?begun=yes&fix.root-id-on-no-disk/fix/1=perhaps",
        "/walk?begun=yes&log=yes",
        "/walk/tree?begun=yes&depth=6",
        "/walk/tree?begun=yes&depth=x",
        "/walk/summary?begun=yes&as=poem",
        "/walks/no-such-walk",
        "/walks/no-picture-after-power-on?screen=dark",
        "/walks/no-picture-after-power-on?sign-of-life=maybe",
        "/log/00000000000000000000000000000000/walk",
        "/log/00000000000000000000000000000000/walk/tree",
        "/log/00000000000000000000000000000000/walk/summary",
      })
  void badInputIsRefused(String path) throws Exception {
    int status = get(path).statusCode();
    assertTrue(status >= 400 && status < 500, status + " for " + path);
  }

  @Test
  void aTextThatIsNoLogIsSentToTheSymptoms() throws Exception {
    String address = paste("Dear all,\nmy machine is broken.\nYours\n");
    HttpResponse<String> answer = get(address + "/walk");
    assertEquals(400, answer.statusCode());
    assertTrue(page(address).contains("href=\"/walk\""));
  }

  @Test
  void markupInALogIsEscaped() throws Exception {
    String text =
        Files.readString(Path.of("docs/examples/wrong-root-id.log"))
            .replaceAll("UUID=\\S+", "UUID=<script>alert(1)</script>");
    String address = paste(text);
    for (String view : List.of("/walk", "/walk/tree", "/walk/summary")) {
      assertFalse(page(address + view).contains("<script>alert"), view);
    }
    assertFalse(get("/walk?stage=%3Cscript%3Ealert(1)").body().contains("<script>alert"));
  }

  @Test
  void summaryNamesNoHostOrDisk() throws Exception {
    String text =
        "systemd[1]: Hostname set to <lantern-attic>.\n"
            + Files.readString(Path.of("docs/examples/wrong-root-id.log"));
    String address = paste(text);
    Matcher uuid =
        Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")
            .matcher(text);
    assertTrue(uuid.find());
    for (String as : List.of("text", "markdown", "json")) {
      String summary = page(address + "/walk/summary?as=" + as);
      assertFalse(summary.contains("lantern-attic"), as);
      assertFalse(summary.contains(uuid.group()), as);
      assertTrue(summary.contains("root-id-on-no-disk"), as);
    }
  }

  @Test
  void anAnswerThatDoesNotFitIsSaid() throws Exception {
    Guide guide = new Guide(diagnoser.base());
    Ranking start =
        diagnoser
            .diagnose(Files.readString(Path.of("docs/examples/wrong-root-id.log")))
            .diagnosis()
            .orElseThrow()
            .ranking();
    String turn =
        diagnoser.base().checks().stream()
            .flatMap(
                c ->
                    c.answers().stream()
                        .filter(a -> guide.chance(start, c.id(), a.id()) < 0.03)
                        .map(a -> "check." + c.id() + "=" + a.id()))
            .findFirst()
            .orElseThrow();
    assertTrue(page(log + "/walk?" + turn).contains("This does not fit:"));
    assertTrue(page(log + "/walk/summary?as=text&" + turn).contains("What does not fit together"));
  }

  @Test
  void fixesTriedBeforeAreNotProposed() throws Exception {
    String differs = log + "/walk?check.list-disks-in-rescue-shell=disk-there-id-differs";
    assertTrue(
        page(differs)
            .contains("fix.root-id-on-no-disk/fix/put-right-identifier-on-command-line=helped"));
    assertFalse(
        page(differs + "&before=root-id-on-no-disk/fix/1")
            .contains("fix.root-id-on-no-disk/fix/put-right-identifier-on-command-line=helped"));
  }

  @Test
  void everyStepOfAWalkWrittenByHandRendersAndEnds() throws Exception {
    assertTrue(diagnoser.base().walks().size() >= 3);
    for (Walk walk : diagnoser.base().walks()) {
      Deque<String> open = new ArrayDeque<>(List.of("/walks/" + walk.id()));
      int ends = 0;
      while (!open.isEmpty()) {
        String page = page(open.removeFirst());
        List<String> next = replies(page);
        ends += next.isEmpty() ? 1 : 0;
        open.addAll(next);
      }
      assertTrue(ends >= 3, walk.id());
    }
  }

  @Test
  void writtenWalksAreOfferedWhereTheyApply() throws Exception {
    assertTrue(page("/walk?stage=firmware").contains("/walks/no-picture-after-power-on"));
    assertTrue(
        page("/walk?begun=yes&stage=root&sees=shell-before-root")
            .contains("/walks/shell-of-the-initramfs"));
  }

  @Test
  void templatesNeverSwitchEscapingOff() throws Exception {
    try (Stream<Path> templates = Files.list(Path.of("src/main/resources/templates"))) {
      for (Path template : templates.toList()) {
        String text = Files.readString(template);
        assertFalse(text.contains("raw"), template.toString());
        assertFalse(text.contains("autoescape"), template.toString());
      }
    }
  }

  @Test
  void aDarkScreenBeginsWithTheWalkWrittenForItAndItsEndLeadsBack() throws Exception {
    String dark =
        replies(page("/walk")).stream().filter(l -> l.contains("sees=")).findFirst().orElseThrow();
    assertTrue(replies(page(dark)).contains("/walks/no-picture-after-power-on"), dark);
    String end = page("/walks/no-picture-after-power-on?sign-of-life=on-and-off");
    Matcher back = Pattern.compile("class=\"go\" href=\"([^\"]+)\"").matcher(end);
    assertTrue(back.find());
    String on = page(back.group(1).replace("&amp;", "&"));
    assertFalse(replies(on).contains("/walks/no-picture-after-power-on"));
    assertTrue(on.contains("it came to: "));
  }

  @Test
  void aRepairForOneBootThatHelpedAsksForTheLastingOne() throws Exception {
    String first =
        replies(page(log + "/walk")).stream()
            .filter(l -> l.endsWith("=helped"))
            .findFirst()
            .orElseThrow();
    String next = page(first);
    assertTrue(next.contains("You are in; now make it hold."), next);
    assertFalse(next.contains(">Done<"));
  }

  @Test
  void whatIsLeftIsOfferedToChooseFromBeforeHandingOver() throws Exception {
    String address = log + "/walk";
    for (int i = 0; i < 40; i++) {
      String page = page(address);
      if (page.contains("Try one of these?")) {
        String choice = replies(page).get(0);
        assertTrue(choice.contains("=try"), choice);
        assertTrue(page(choice).contains("Did it help?"));
        return;
      }
      Matcher skip = Pattern.compile("<a href=\"([^\"]+)\">Skip this step").matcher(page);
      assertTrue(skip.find(), page);
      address = skip.group(1).replace("&amp;", "&");
    }
    throw new AssertionError("the walk came to no end");
  }
}
