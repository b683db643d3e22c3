package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.account.Accounts;
import standstill.intake.Addresses;

/** Signing in over HTTP, each time at a server on which nobody has tried to yet. */
class SignInTest {
  @TempDir private static Path folder;
  private static TeamServer running;
  private Javalin server = Javalin.create();
  private String root = "";

  @BeforeAll
  static void start() throws Exception {
    running = TeamServer.start(folder);
  }

  @AfterAll
  static void stop() throws Exception {
    running.close();
  }

  private static Path accounts() {
    return folder.resolve("accounts");
  }

  @BeforeEach
  void serve() throws Exception {
    serve(Addresses.none());
  }

  private void serve(Addresses proxies) throws Exception {
    server.stop();
    EditDesk desk = new EditDesk(running.editing(), Accounts.open(accounts()));
    server =
        Server.create(running.inUse(), Optional.of(desk), Settings.of(List.of(), proxies))
            .start("127.0.0.1", 0);
    root = "http://127.0.0.1:" + server.port();
  }

  @AfterEach
  void end() {
    server.stop();
  }

  private static int guesses(Maintainer who, String name, int times) throws Exception {
    int taken = 0;
    for (int i = 0; i < times; i++) {
      taken += who.signIn(name, "guess number " + i).statusCode() == 401 ? 1 : 0;
    }
    return taken;
  }

  @Test
  void guessingIsHeldUpAndTheAnswerSaysWhatToDo() throws Exception {
    Maintainer guesser = new Maintainer(root);
    assertEquals(5, guesses(guesser, "ada", 7));
    HttpResponse<String> answer = guesser.signIn("ada", TeamServer.ADA);
    assertEquals(429, answer.statusCode());
    assertTrue(answer.headers().firstValue("Retry-After").isPresent());
    assertTrue(answer.body().contains("Wait 15 minutes"), answer.body());
    assertTrue(answer.body().contains("a browser in which you signed in before"), answer.body());
  }

  @Test
  void nobodyLocksOutWhoSignedInHereBefore() throws Exception {
    Maintainer ada = new Maintainer(root);
    assertEquals(303, ada.signIn("ada", TeamServer.ADA).statusCode());
    guesses(new Maintainer(root), "ada", 12);
    assertEquals(429, new Maintainer(root).signIn("ada", TeamServer.ADA).statusCode());
    assertEquals(303, ada.signIn("ada", TeamServer.ADA).statusCode());
  }

  @Test
  void aPassLetsARightfulUserTryOnANewDevice() throws Exception {
    guesses(new Maintainer(root), "ada", 12);
    Maintainer fresh = new Maintainer(root);
    String pass = Accounts.open(accounts()).proof("ada").orElseThrow();
    assertEquals(401, fresh.signIn("ada", "not the password", pass).statusCode());
    assertEquals(303, fresh.signIn("ada", TeamServer.ADA, pass).statusCode());
    assertEquals(429, new Maintainer(root).signIn("ada", TeamServer.ADA, "x." + pass).statusCode());
  }

  @Test
  void behindAProxyEachIsCountedForThemselves() throws Exception {
    serve(Addresses.of(List.of("127.0.0.1")));
    assertEquals(5, guesses(new Maintainer(root, "192.0.2.1"), "bram", 6));
    assertEquals(
        429, new Maintainer(root, "192.0.2.1").signIn("bram", TeamServer.BRAM).statusCode());
    assertEquals(
        303, new Maintainer(root, "192.0.2.2").signIn("bram", TeamServer.BRAM).statusCode());
    // What the sender wrote stands left of what the proxy saw, and is not believed.
    assertEquals(
        429,
        new Maintainer(root, "192.0.2.77, 192.0.2.1").signIn("bram", TeamServer.BRAM).statusCode());
  }

  @Test
  void withoutAProxyNobodyChoosesTheirOwnAddress() throws Exception {
    int taken = 0;
    for (int i = 0; i < 10; i++) {
      taken += guesses(new Maintainer(root, "192.0.2." + i), "ada", 1);
    }
    assertEquals(5, taken);
  }

  @Test
  void anotherPasswordEndsAllSessions() throws Exception {
    Path file = accounts();
    Accounts.put(file, "carla", "an old lamp in the hall");
    Maintainer carla = new Maintainer(root);
    assertEquals(303, carla.signIn("carla", "an old lamp in the hall").statusCode());
    assertEquals(200, carla.get("/changes").statusCode());
    Accounts.put(file, "carla", "a new lamp in the hall");
    HttpResponse<String> answer = carla.get("/changes");
    assertEquals(303, answer.statusCode(), answer.body());
    assertTrue(answer.headers().firstValue("Location").orElse("").contains("/sign-in"));
    assertEquals(303, carla.signIn("carla", "a new lamp in the hall").statusCode());
    assertEquals(200, carla.get("/changes").statusCode());
  }
}
