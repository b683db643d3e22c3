package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import standstill.account.Accounts;
import standstill.account.Attempts;
import standstill.account.Sessions;

/** Signing in and out. */
final class SignInPage {
  private static final String COOKIE = "standstill-sign-in";
  private static final int LONGEST_WAY = 500;

  /** With the name behind it: proves that the name signed in here before. */
  private static final String DEVICE = "standstill-device-";

  private static final String DEVICE_KEPT = "; Path=/sign-in; Max-Age=15552000";

  private final Pages pages;
  private final Guard guard;
  private final EditDesk desk;

  SignInPage(Pages pages, Guard guard, EditDesk desk) {
    this.pages = pages;
    this.guard = guard;
    this.desk = desk;
  }

  void show(Context ctx) {
    form(ctx, way(ctx.queryParam("to")), "", false);
  }

  private void form(Context ctx, String to, String said, boolean held) {
    // The form and the browser both hold the token; a foreign page can't make them agree.
    String token = desk.sessions().token();
    Guard.setCookie(ctx, COOKIE, token);
    pages.show(ctx, "sign-in", Map.of("to", to, "said", said, "held", held, "token", token));
  }

  void enter(Context ctx) throws IOException {
    String kept = ctx.cookie(COOKIE);
    String sent = ctx.formParam("token");
    if (kept == null || kept.isEmpty() || sent == null || !Sessions.same(kept, sent)) {
      throw new ForbiddenResponse("Open the page for signing in anew, and send its form.");
    }
    String name = text(ctx, "name");
    String password = text(ctx, "password");
    String to = way(ctx.formParam("to"));
    Attempts.Who who = who(ctx, name);
    Duration wait = desk.attempts().take(who);
    if (!wait.isZero()) {
      ctx.status(HttpStatus.TOO_MANY_REQUESTS);
      ctx.header("Retry-After", Long.toString(wait.toSeconds() + 1));
      form(
          ctx,
          to,
          "Too many attempts. Wait "
              + (wait.toMinutes() + 1)
              + " minutes, use a browser in which you signed in before, or ask whoever keeps the"
              + " accounts for a pass.",
          true);
      return;
    }
    Optional<String> mark;
    try {
      mark = desk.accounts().enter(name, password);
    } catch (Accounts.CrowdedException e) {
      desk.attempts().succeeded(who);
      throw new Overloaded();
    }
    if (mark.isEmpty()) {
      ctx.status(HttpStatus.UNAUTHORIZED);
      form(ctx, to, "Name and password do not belong together.", false);
      return;
    }
    desk.attempts().succeeded(who);
    Guard.setCookie(ctx, COOKIE, "");
    guard.begin(ctx, name, mark.get());
    if (who.device().isEmpty() || ctx.cookie(DEVICE + name) == null) {
      desk.accounts()
          .proof(name)
          .ifPresent(proof -> Guard.setCookie(ctx, DEVICE + name, proof, DEVICE_KEPT));
    }
    ctx.redirect(to, HttpStatus.SEE_OTHER);
  }

  private Attempts.Who who(Context ctx, String name) throws IOException {
    String address = Upload.client(ctx);
    if (!Accounts.isName(name)) {
      return new Attempts.Who("", false, address, Optional.empty());
    }
    Accounts accounts = desk.accounts();
    String cookie = ctx.cookie(DEVICE + name);
    Optional<String> device = accounts.device(name, cookie == null ? "" : cookie);
    if (device.isEmpty()) {
      device = accounts.device(name, text(ctx, "pass").strip());
    }
    return new Attempts.Who(name, accounts.has(name), address, device);
  }

  void leave(Context ctx) {
    guard.writer(ctx);
    guard.end(ctx);
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  private static String text(Context ctx, String key) {
    String value = ctx.formParam(key);
    return value == null ? "" : value;
  }

  /** Where to go after signing in: a way on this server and nowhere else. */
  static String way(@Nullable String to) {
    boolean here =
        to != null
            && to.startsWith("/")
            && !to.startsWith("//")
            && to.length() <= LONGEST_WAY
            && to.chars().allMatch(c -> c > ' ' && c < 0x7f && c != '\\');
    return here && to != null ? to : "/changes";
  }
}
