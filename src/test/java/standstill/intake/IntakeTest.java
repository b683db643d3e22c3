package standstill.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.function.BooleanSupplier;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What is let in, before a small program that only says how much it was sent. */
class IntakeTest {
  private static final String POST = "POST /api/diagnose HTTP/1.1\nHost: localhost";
  private static final String GET = "GET / HTTP/1.1\nHost: localhost";

  private final CountDownLatch letGo = new CountDownLatch(1);
  private Intake intake =
      new Intake(
          new Names(List.of()), Addresses.none(), limits(), Map.of(), (t, a) -> t + ": " + a);
  private Server server = new Server();
  private int port;

  private static Limits limits() {
    return new Limits(
        1 << 20,
        4 << 20,
        Duration.ofMillis(300),
        8 << 10,
        24,
        300,
        60,
        Duration.ofSeconds(20),
        Duration.ofMillis(300),
        Duration.ofSeconds(1));
  }

  /** Few threads: whoever holds one keeps somebody out. */
  private void start() throws Exception {
    server = new Server(new QueuedThreadPool(8));
    server.addConnector(new ServerConnector(server));
    intake.before(server);
    Handler.Wrapper last = (Handler.Wrapper) server.getHandler();
    while (last.getHandler() instanceof Handler.Wrapper next) {
      last = next;
    }
    last.setHandler(
        new Handler.Abstract() {
          @Override
          public boolean handle(Request request, Response response, Callback callback)
              throws Exception {
            String body = Content.Source.asString(request);
            if (request.getHttpURI().getPath().equals("/stuck")) {
              letGo.await();
            }
            if (request.getHttpURI().getPath().equals("/large")) {
              body = "x".repeat(1 << 20);
            }
            Content.Sink.write(response, true, "was sent " + body.length() + body, callback);
            return true;
          }
        });
    intake.watch(server);
    server.start();
    intake.sweep(server);
    port = ((ServerConnector) server.getConnectors()[0]).getLocalPort();
  }

  @AfterEach
  void stop() throws Exception {
    letGo.countDown();
    server.stop();
  }

  private static void await(String what, BooleanSupplier condition) throws Exception {
    for (int i = 0; i < 1_000; i++) {
      if (condition.getAsBoolean()) {
        return;
      }
      Thread.sleep(10);
    }
    throw new AssertionError("never: " + what);
  }

  @Test
  void twoHundredClientsThatSendAByteNowAndThenHoldNobodyUp() throws Exception {
    start();
    List<Wire> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 200; i++) {
        slow.add(new Wire(port).send(POST + "\nContent-Length: 5000\n\nx"));
      }
      for (int i = 0; i < 20; i++) {
        String answer = Wire.ask(port, POST, "a log");
        assertTrue(answer.startsWith("HTTP/1.1 200 "), answer);
      }
      String told = slow.get(199).rest();
      assertTrue(told.startsWith("HTTP/1.1 408 "), told);
      assertTrue(told.contains("came in too slowly") && told.contains("gzip"), told);
      String other = slow.get(0).rest();
      assertTrue(other.contains("Too many logs at once"), other);
      await("all slow ones are gone", () -> intake.unfinished() == 0 && intake.held() == 0);
    } finally {
      for (Wire wire : slow) {
        wire.close();
      }
    }
  }

  @Test
  void aHeaderThatNeverEndsIsNotWaitedFor() throws Exception {
    start();
    try (Wire wire = new Wire(port).send("GET / HTTP/1.1\nHost: localhost\nX-Slow: ")) {
      for (int i = 0; i < 3 && intake.connections() > 0; i++) {
        wire.send("x");
        Thread.sleep(20);
      }
      // Twice, because the first look only notes that a header has begun.
      ((Connections) server.getHandler()).sweep();
      Thread.sleep(350);
      ((Connections) server.getHandler()).sweep();
      await("the connection is closed", () -> intake.connections() == 0);
    }
  }

  @Test
  void aThousandConnectionsKeepNobodyOut() throws Exception {
    start();
    List<Wire> held = new ArrayList<>();
    try {
      for (int i = 0; i < 400; i++) {
        held.add(new Wire(port));
      }
      assertTrue(Wire.ask(port, GET, "").contains(" 200 "));
      await("only so many are open", () -> intake.connections() <= 300);
      assertEquals("", held.get(0).rest(), "the one that waited longest is closed");
    } finally {
      for (Wire wire : held) {
        wire.close();
      }
    }
  }

  @Test
  void aRequestThatTakesTooLongIsAnsweredAllTheSame() throws Exception {
    start();
    String answer = Wire.ask(port, "GET /stuck HTTP/1.1\nHost: localhost", "");
    assertTrue(answer.startsWith("HTTP/1.1 503 "), answer);
    assertTrue(
        answer.contains("Retry-After:") && answer.contains("No answer in 1 seconds"), answer);
    assertTrue(answer.contains("ask again"), answer);
    String log = Wire.ask(port, "POST /stuck HTTP/1.1\nHost: localhost", "x");
    assertTrue(log.contains("Look first whether it was"), log);
    assertTrue(Wire.ask(port, GET, "").contains(" 200 "));
  }

  @Test
  void whoDoesNotReadAnAnswerHoldsNobodyUp() throws Exception {
    start();
    List<Wire> deaf = new ArrayList<>();
    try {
      for (int i = 0; i < 30; i++) {
        deaf.add(new Wire(port).send("GET /large HTTP/1.1\nHost: localhost\n\n"));
      }
      for (int i = 0; i < 10; i++) {
        String answer = Wire.ask(port, GET, "");
        assertTrue(answer.contains(" 200 "), answer);
      }
      assertTrue(intake.held() <= limits().bodyBytes() / 2, intake.held() + " bytes held");
    } finally {
      for (Wire wire : deaf) {
        wire.abort();
      }
    }
    await("nothing is held any more", () -> intake.held() == 0);
  }

  @Test
  void whatIsTooLargeIsRefusedBeforeItIsRead() throws Exception {
    start();
    try (Wire wire = new Wire(port).send(POST + "\nContent-Length: 99999999\n\n")) {
      String answer = wire.rest();
      assertTrue(answer.startsWith("HTTP/1.1 413 "), answer);
      assertTrue(answer.contains("tail -n 20000"), answer);
    }
    String endless = "8000\n" + "x".repeat(0x8000) + "\n";
    try (Wire wire = new Wire(port).send(POST + "\nTransfer-Encoding: chunked\n\n")) {
      for (int i = 0; i < 33; i++) {
        wire.send(endless);
      }
      assertTrue(wire.rest().startsWith("HTTP/1.1 413 "));
    }
    await("nothing is held any more", () -> intake.held() == 0);
  }

  @Test
  void anUploadThatBreaksOffIsOneLineInTheServersWords() throws Exception {
    start();
    PrintStream before = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
    try {
      Wire wire = new Wire(port).send(POST + "\nContent-Length: 5000\n\nhalf a log");
      await("it is waited for", () -> intake.unfinished() == 1);
      wire.abort();
      await("it is given up", () -> intake.unfinished() == 0);
      await("it is told", () -> said.size() > 0);
      assertTrue(Wire.ask(port, GET, "").contains(" 200 "));
    } finally {
      System.setErr(before);
    }
    List<String> lines = said.toString(StandardCharsets.UTF_8).lines().toList();
    assertEquals(1, lines.size(), lines.toString());
    assertTrue(
        lines.get(0).contains("upload from 127.0.0.1 ended after 10 bytes"), lines.toString());
  }

  @Test
  void aPageThatGivesItsOwnNameThisAddressGetsNothing() throws Exception {
    start();
    for (String name : List.of("evil.example", "evil.example:" + port, "127.0.0.1.evil.example")) {
      String answer = Wire.ask(port, "GET / HTTP/1.1\nHost: " + name, "");
      assertTrue(answer.startsWith("HTTP/1.1 421 "), answer);
      assertTrue(answer.contains("Not under this name") && answer.contains("--name"), answer);
      assertFalse(answer.contains("was sent"), answer);
    }
    for (String name : List.of("localhost", "LOCALHOST:" + port, "127.0.0.1", "[::1]:" + port)) {
      String answer = Wire.ask(port, "GET / HTTP/1.1\nHost: " + name, "");
      assertTrue(answer.startsWith("HTTP/1.1 200 "), name + " " + answer);
    }
  }

  @Test
  void onlyOwnPagesSendAnything() throws Exception {
    start();
    String own = POST + ":" + port;
    for (String foreign :
        List.of(
            "Origin: http://evil.example",
            "Origin: null",
            "Origin: http://localhost:" + (port + 1),
            "Origin: http://localhost",
            "Origin: nonsense",
            "Sec-Fetch-Site: cross-site",
            "Sec-Fetch-Site: same-site")) {
      String answer = Wire.ask(port, own + "\n" + foreign, "a log");
      assertTrue(answer.startsWith("HTTP/1.1 403 "), foreign + ": " + answer);
      assertTrue(answer.contains("Not from another page"), answer);
    }
    for (String fine :
        List.of(
            "Origin: http://localhost:" + port + "\nSec-Fetch-Site: same-origin",
            "Origin: null\nSec-Fetch-Site: same-origin",
            "Sec-Fetch-Site: none",
            "Accept: */*")) {
      String answer = Wire.ask(port, own + "\n" + fine, "a log");
      assertTrue(answer.contains("was sent 5"), fine + ": " + answer);
    }
    String reading = Wire.ask(port, GET + "\nSec-Fetch-Site: cross-site", "");
    assertTrue(reading.startsWith("HTTP/1.1 200 "), "a link on another page still leads here");
  }

  @Test
  void behindAProxyTheNameAndThePageAreThoseThatTheTeamUses() throws Exception {
    intake =
        new Intake(
            new Names(List.of("base.example")),
            Addresses.of(List.of("127.0.0.1")),
            limits(),
            Map.of(),
            (t, a) -> t + ": " + a);
    start();
    String origin = "\nOrigin: https://base.example";
    String passed = Wire.ask(port, "POST / HTTP/1.1\nHost: base.example" + origin, "x");
    assertTrue(passed.startsWith("HTTP/1.1 200 "), passed);
    String renamed = Wire.ask(port, "POST / HTTP/1.1\nHost: localhost:" + port + origin, "x");
    assertTrue(renamed.startsWith("HTTP/1.1 200 "), renamed);
    String foreign =
        Wire.ask(port, "POST / HTTP/1.1\nHost: base.example\nOrigin: https://evil.example", "x");
    assertTrue(foreign.startsWith("HTTP/1.1 403 "), foreign);
  }
}
