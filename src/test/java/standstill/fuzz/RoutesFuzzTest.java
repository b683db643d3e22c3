package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.code_intelligence.jazzer.junit.FuzzTest;
import io.javalin.Javalin;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.search.Search;
import standstill.store.BaseInUse;
import standstill.web.Server;

/**
 * Any request is answered, and never with the program's own failure.
 *
 * <p>The first line of an input is a path, with {@code ?name=value&...}; what follows is sent as a
 * body when there is any.
 */
class RoutesFuzzTest {
  /** The server breaks off when a target takes more than it reads as a head. */
  private static final int LONGEST_TARGET = 4_000;

  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Javalin server;

  @BeforeAll
  static void start() throws Exception {
    server =
        Server.create(BaseInUse.of(Path.of("kb"), base -> Search.open(base, Optional.empty())))
            .start("127.0.0.1", 0);
  }

  @AfterAll
  static void stop() {
    server.stop();
  }

  @FuzzTest(maxDuration = "5m")
  void requestsAreAnswered(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentRequestsAreAnswered() {
    Bent.inputs(getClass(), "requestsAreAnswered", 100, RoutesFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    int end = text.indexOf('\n');
    String target = encoded(end < 0 ? text : text.substring(0, end));
    URI uri = URI.create("http://127.0.0.1:" + server.port() + "/" + target);
    HttpRequest.Builder request = HttpRequest.newBuilder(uri);
    if (end >= 0) {
      request
          .header("Content-Type", "text/plain")
          .POST(HttpRequest.BodyPublishers.ofString(text.substring(end + 1)));
    }
    try {
      HttpResponse<String> answer = answer(request.build());
      assertNotEquals(500, answer.statusCode(), target + ": " + answer.body());
      assertFalse(answer.body().contains("\tat standstill."), target);
    } catch (IOException e) {
      throw new AssertionError(target, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Asked once more when the server had closed the kept connection for idleness meanwhile. */
  private static HttpResponse<String> answer(HttpRequest request)
      throws IOException, InterruptedException {
    try {
      return CLIENT.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      return CLIENT.send(request, HttpResponse.BodyHandlers.ofString());
    }
  }

  /** The target with the marks that part it kept and everything else as an address writes it. */
  private static String encoded(String target) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < target.length() && out.length() < LONGEST_TARGET; i++) {
      String sign = target.substring(i, i + 1);
      out.append("/?&=".contains(sign) ? sign : URLEncoder.encode(sign, StandardCharsets.UTF_8));
    }
    return out.toString().replaceFirst("^/+", "");
  }
}
