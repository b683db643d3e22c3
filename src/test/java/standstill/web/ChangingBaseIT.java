package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.search.Search;
import standstill.store.BaseCopy;
import standstill.store.BaseInUse;

/** A running server whose base changes on disk. */
class ChangingBaseIT {
  private static final int CHANGES = 24;
  private static final List<String> MARKED = List.of("root-id-on-no-disk", "machine-check-cpu");
  private static final Pattern MARK = Pattern.compile("Lantern mark (\\d+)");

  @TempDir private Path folder;
  @TempDir private Path index;
  private final HttpClient client = HttpClient.newHttpClient();
  private BaseInUse inUse;
  private Javalin server;
  private String root;

  @BeforeEach
  void start() throws Exception {
    BaseCopy.into(folder);
    mark(0);
    inUse = BaseInUse.of(folder, base -> Search.open(base, Optional.of(index)));
    server = Server.create(inUse).start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
  }

  @AfterEach
  void stop() {
    server.stop();
    inUse.close();
  }

  private Path file(String fault) throws Exception {
    try (Stream<Path> walk = Files.walk(folder.resolve("faults"))) {
      return walk.filter(p -> p.endsWith(fault + ".yaml")).findFirst().orElseThrow();
    }
  }

  /** Puts the same number into the titles of two faults. */
  private void mark(int number) throws Exception {
    for (String fault : MARKED) {
      Path file = file(fault);
      Files.writeString(
          file,
          Files.readString(file)
              .replaceFirst(
                  "(?m)^title: (Lantern mark \\d+ )?", "title: Lantern mark " + number + " "));
    }
  }

  private HttpResponse<String> get(String path) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create(root + path)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String path, String type, String body) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create(root + path))
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void noRequestFailsAndNoneMixesTwoBasesWhileTheBaseChanges() throws Exception {
    String log = Files.readString(Path.of("docs/examples/wrong-root-id.log"));
    String form = "log=" + URLEncoder.encode(log, StandardCharsets.UTF_8);
    String address =
        post("/diagnose", "application/x-www-form-urlencoded", form)
            .headers()
            .firstValue("Location")
            .orElseThrow();
    List<String> paths =
        List.of(
            "/",
            "/handbook",
            "/fault/root-id-on-no-disk",
            "/faults?stage=root",
            "/search?q=lantern+mark",
            "/api/suggest?q=lantern",
            "/walk?begun=yes&stage=root",
            "/base",
            address,
            address + "/walk",
            address + "/walk/summary");
    Queue<String> wrong = new ConcurrentLinkedQueue<>();
    AtomicInteger answered = new AtomicInteger();
    AtomicBoolean over = new AtomicBoolean();
    Thread[] readers = new Thread[2];
    for (int i = 0; i < readers.length; i++) {
      int from = i * 6;
      readers[i] =
          new Thread(
              () -> {
                for (int n = from; !over.get(); n++) {
                  String path = paths.get(n % paths.size());
                  try {
                    Thread.sleep(20);
                    HttpResponse<String> answer = get(path);
                    answered.incrementAndGet();
                    if (answer.statusCode() != 200) {
                      wrong.add(answer.statusCode() + " " + path);
                    }
                    if (marks(answer.body()).size() > 1) {
                      wrong.add("two bases in " + path);
                    }
                  } catch (Exception e) {
                    wrong.add(path + ": " + e);
                  }
                }
              });
      readers[i].start();
    }
    try {
      for (int number = 1; number <= CHANGES; number++) {
        mark(number);
        assertTrue(inUse.reload().refused().isEmpty(), inUse.now().refused().toString());
        String page = get("/fault/" + MARKED.get(0)).body();
        assertEquals(new TreeSet<>(List.of(Integer.toString(number))), marks(page));
        String found = get("/search?q=lantern+mark+" + number).body();
        assertTrue(found.contains("/fault/" + MARKED.get(0)), "the search follows");
        assertEquals(
            200, post("/api/diagnose", "text/plain", log).statusCode(), "the program interface");
      }
    } finally {
      over.set(true);
      for (Thread reader : readers) {
        reader.join();
      }
    }
    assertEquals(List.of(), List.copyOf(wrong));
    assertTrue(answered.get() > CHANGES, answered + " requests");
  }

  private static TreeSet<String> marks(String page) {
    TreeSet<String> marks = new TreeSet<>();
    Matcher matcher = MARK.matcher(page);
    while (matcher.find()) {
      marks.add(matcher.group(1));
    }
    return marks;
  }

  @Test
  void aBrokenBaseIsRefusedAndSaidOnEveryPageUntilItIsRepaired() throws Exception {
    assertFalse(get("/").body().contains("class=\"notice\""));
    Path file = file(MARKED.get(0));
    String sound = Files.readString(file);
    Files.writeString(file, sound.replace("how-common: ", "how-common: <b>ofen # "));
    inUse.reload();
    for (String path : List.of("/", "/faults", "/search", "/no-such-page")) {
      String page = get(path).body();
      assertTrue(page.contains("class=\"notice\"") && page.contains("has 1 error;"), path);
    }
    String page = get("/base").body();
    assertTrue(
        page.matches("(?s).*<code>faults/root/root-id-on-no-disk\\.yaml:\\d+:\\d+</code>.*"), page);
    assertTrue(page.contains("&lt;b&gt;ofen") && !page.contains("<b>ofen"), "escaped");
    assertFalse(page.contains(folder.toString()), "the server's folders are nobody's business");
    assertEquals(200, get("/fault/" + MARKED.get(0)).statusCode());
    Files.writeString(file, sound);
    inUse.reload();
    assertFalse(get("/").body().contains("class=\"notice\""));
    assertTrue(get("/base").body().contains("in use since"));
  }

  @Test
  void thePageOfAWatchedFolderChangesByItself() throws Exception {
    inUse.watch(Duration.ofMillis(50));
    mark(77);
    String page = "";
    for (int i = 0; i < 600 && !page.contains("Lantern mark 77"); i++) {
      Thread.sleep(50);
      page = get("/fault/" + MARKED.get(0)).body();
    }
    assertTrue(page.contains("Lantern mark 77"));
  }
}
