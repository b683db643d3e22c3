package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Symptom;
import standstill.base.Trail;
import standstill.search.Search;
import standstill.store.BaseInUse;

/** The pages that find and show entries, over HTTP, with the project's own base. */
class FindPagesTest {
  private static final Pattern HREF = Pattern.compile("href=\"([^\"]+)\"");
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Javalin server;
  private static String root;
  private static Base base;

  @BeforeAll
  static void start() throws Exception {
    BaseInUse inUse =
        BaseInUse.of(java.nio.file.Path.of("kb"), b -> Search.open(b, Optional.empty()));
    base = inUse.now().edition().base();
    server = Server.create(inUse).start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
  }

  @AfterAll
  static void stop() {
    server.stop();
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return CLIENT.send(
        HttpRequest.newBuilder(URI.create(root + path)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private static String page(String path) throws Exception {
    HttpResponse<String> answer = get(path);
    assertEquals(200, answer.statusCode(), path);
    assertTrue(answer.body().contains("<h1"), path);
    assertFalse(answer.body().contains("style="), path);
    return answer.body();
  }

  private static List<String> links(String page) {
    List<String> links = new ArrayList<>();
    Matcher href = HREF.matcher(page);
    while (href.find()) {
      links.add(href.group(1).replace("&amp;", "&"));
    }
    return links;
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  @Test
  void everyEntryHasAPageAndEveryLinkOfItLeadsSomewhere() throws Exception {
    Set<String> asked = new HashSet<>();
    Set<String> found = new HashSet<>();
    for (Fault fault : base.faults()) {
      found.add("/fault/" + fault.id());
    }
    base.checks().stream().map(Check::id).forEach(id -> found.add("/check/" + id));
    base.symptoms().stream().map(Symptom::id).forEach(id -> found.add("/symptom/" + id));
    for (String path : List.copyOf(found)) {
      asked.add(path);
      links(page(path)).stream()
          .filter(link -> link.matches("/(fault|check|symptom)/.*"))
          .forEach(found::add);
    }
    found.removeAll(asked);
    assertEquals(Set.of(), found, "links to entries that are not there");
  }

  @Test
  void aFaultsPageShowsAllThatIsKnownOfIt() throws Exception {
    Fault fault = base.fault("root-id-on-no-disk").orElseThrow();
    String page = page("/fault/" + fault.id());
    List<String> parts = new ArrayList<>(List.of(fault.title(), fault.prevent()));
    fault.symptoms().forEach(id -> parts.add(base.symptom(id).orElseThrow().title()));
    fault.signs().forEach(sign -> sign.seen().stream().limit(1).forEach(parts::add));
    fault.fixes().forEach(fix -> parts.addAll(List.of(fix.title(), fix.prove(), fix.undo())));
    fault.fixes().forEach(fix -> parts.addAll(fix.cautions()));
    fault.toldApartBy().keySet().forEach(id -> parts.add(base.check(id).orElseThrow().title()));
    fault.sources().forEach(source -> parts.add(source.title()));
    for (String part : parts) {
      assertTrue(page.contains(escaped(part)), part);
    }
    assertTrue(page.contains("It is easily taken for"));
    assertTrue(page.contains("Labelled boots that show it"));
  }

  @Test
  void stepsForOtherSystemsAreSetApartWhenTheReaderSaysTheirs() throws Exception {
    String all = page("/fault/stale-menu-entry-after-update");
    assertTrue(all.contains("update-grub") && all.contains("grub2-mkconfig"));
    assertTrue(all.contains("What is your system like?"));
    assertFalse(all.contains("Steps for other systems"));
    String own = page("/fault/stale-menu-entry-after-update?for=debian&for=grub&for=");
    String shown = own.replaceAll("(?s)<details class=\"others\">.*?</details>", "");
    assertTrue(shown.contains("update-grub") && !shown.contains("grub2-mkconfig"), shown);
    assertTrue(own.contains("Steps for other systems") && own.contains("grub2-mkconfig"));
    assertEquals(400, get("/fault/stale-menu-entry-after-update?for=toaster").statusCode());
  }

  @Test
  void aFormerIdLeadsToThePresentOne() throws Exception {
    Optional<Fault> renamed =
        base.faults().stream().filter(f -> !f.aliases().isEmpty()).findFirst();
    if (renamed.isPresent()) {
      HttpResponse<String> answer = get("/fault/" + renamed.get().aliases().get(0));
      assertEquals(301, answer.statusCode());
      assertEquals(
          "/fault/" + renamed.get().id(), answer.headers().firstValue("Location").orElseThrow());
    }
  }

  @Test
  void aSymptomsPageNamesItsCausesLikeliestFirstAndStartsAWalk() throws Exception {
    String page = page("/symptom/shell-before-root");
    Matcher chance =
        Pattern.compile("<span class=\"tags\">\\w+, (below )?(\\d+) %</span>").matcher(page);
    List<Integer> percents = new ArrayList<>();
    int exact = page.indexOf("id=\"checks\"");
    while (chance.find() && chance.start() < exact) {
      percents.add(chance.group(1) == null ? Integer.parseInt(chance.group(2)) : 0);
    }
    assertTrue(percents.size() > 5, percents.toString());
    assertEquals(percents.stream().sorted(java.util.Comparator.reverseOrder()).toList(), percents);
    String walk =
        links(page).stream().filter(link -> link.startsWith("/walk?")).findFirst().orElseThrow();
    assertTrue(page(walk).contains("id=\"step\""));
  }

  @Test
  void everySymptomStartsAWalk() throws Exception {
    for (Symptom symptom : base.symptoms()) {
      assertTrue(
          page("/walk?begun=yes&sees=" + symptom.id()).contains("id=\"step\""), symptom.id());
    }
  }

  @Test
  void aChecksPageSaysWhatEachAnswerTells() throws Exception {
    String page = page("/check/list-disks-in-rescue-shell");
    for (Check.Answer answer : base.check("list-disks-in-rescue-shell").orElseThrow().answers()) {
      assertTrue(page.contains(escaped(answer.text())), answer.text());
    }
    assertTrue(page.contains("/fault/root-id-on-no-disk"));
  }

  @Test
  void trailsAndHandbookHoldEveryEntry() throws Exception {
    String trails = page("/trails");
    String handbook = page("/handbook");
    for (Trail trail : base.trails()) {
      assertTrue(trails.contains("id=\"" + trail.id() + "\""), trail.id());
      assertTrue(handbook.contains("id=\"trail-" + trail.id() + "\""), trail.id());
    }
    for (Fault fault : base.faults()) {
      assertTrue(handbook.contains("id=\"fault-" + fault.id() + "\""), fault.id());
    }
    for (String link : links(handbook)) {
      if (link.startsWith("#") && link.length() > 1) {
        assertTrue(handbook.contains("id=\"" + link.substring(1) + "\""), link);
      }
    }
  }

  @Test
  void searchMarksWordsAndOffersKinds() throws Exception {
    String page = page("/search?q=passphrase+refused");
    assertTrue(page.contains("<mark>passphrase</mark>"));
    String kinds =
        links(page).stream().filter(l -> l.contains("kind=check")).findFirst().orElseThrow();
    List<String> found =
        links(page(kinds)).stream().filter(l -> l.matches("/(fault|check|symptom)/.*")).toList();
    assertFalse(found.isEmpty());
    assertTrue(found.stream().allMatch(l -> l.startsWith("/check/")), found.toString());
  }

  @Test
  void suggestionsComeAsJson() throws Exception {
    JsonNode suggestions =
        new ObjectMapper().readTree(get("/api/suggest?q=black+scr").body()).at("/suggestions");
    assertTrue(suggestions.toString().contains("black screen after grub"), suggestions.toString());
  }

  @Test
  void markupInAQueryIsEscaped() throws Exception {
    for (String path : List.of("/search?q=", "/faults?stage=", "/fault/", "/symptom/")) {
      assertFalse(
          get(path + "%3Cscript%3Ealert(1)%3C%2Fscript%3E").body().contains("<script>alert"), path);
    }
  }

  @Test
  void facetsAreCombinedFreely() throws Exception {
    String page = page("/faults?stage=root&stage=userland&part=disk&repair=data");
    assertTrue(page.contains("aria-current=\"true\">root</a>"));
    Matcher shown = Pattern.compile("(\\d+) of (\\d+) causes").matcher(page);
    assertTrue(shown.find());
    long wanted =
        base.faults().stream()
            .filter(f -> Set.of("root", "userland").contains(f.stage().word()))
            .filter(f -> f.part().equals("disk"))
            .filter(f -> f.fixes().stream().anyMatch(x -> x.risk().word().equals("data")))
            .count();
    assertTrue(wanted > 0);
    assertEquals(Long.toString(wanted), shown.group(1));
    for (String facet : List.of("stage", "symptom", "part", "risk", "repair", "needs", "kind")) {
      assertTrue(
          links(page("/faults")).stream().anyMatch(l -> l.startsWith("/faults?" + facet + "=")),
          facet);
    }
  }

  @Test
  void everyFacetLinkShowsAsManyAsItSays() throws Exception {
    Matcher value =
        Pattern.compile(
                "<li><a href=\"(/faults[^\"]*)\"[^>]*>[^<]*</a> <span class=\"tags\">(\\d+)</span></li>")
            .matcher(page("/faults"));
    int values = 0;
    while (value.find()) {
      values++;
      String page = page(value.group(1).replace("&amp;", "&"));
      assertTrue(page.contains("\"facts\">" + value.group(2) + " of "), value.group());
    }
    assertTrue(values > 60, values + " values");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/fault/no-such-fault",
        "/check/no-such-check",
        "/symptom/no-such-symptom",
        "/symptom/..%2F..",
        "/search?q=x&kind=poem",
      })
  void badAddressesAreRefused(String path) throws Exception {
    int status = get(path).statusCode();
    assertTrue(status >= 400 && status < 500, status + " for " + path);
  }

  @Test
  void tooLongAQueryIsSentToThePasteBox() throws Exception {
    HttpResponse<String> answer = get("/search?q=" + "lamp+".repeat(500));
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("paste box"));
  }

  @Test
  void theBasePageSaysWhatIsInUse() throws Exception {
    String page = page("/base");
    assertTrue(page.contains(base.faults().size() + " causes"));
    assertTrue(page.contains("labelled boots"));
  }
}
