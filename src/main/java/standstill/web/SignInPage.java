package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import standstill.account.Accounts;
import standstill.account.Sessions;

/** Signing in and out. */
final class SignInPage {
  private static final String COOKIE = "standstill-sign-in";
  private static final int LONGEST_WAY = 500;

  private final Pages pages;
  private final Guard guard;
  private final EditDesk desk;

  SignInPage(Pages pages, Guard guard, EditDesk desk) {
    this.pages = pages;
    this.guard = guard;
    this.desk = desk;
  }

  void show(Context ctx) {
    form(ctx, way(ctx.queryParam("to")), "");
  }

  private void form(Context ctx, String to, String said) {
    // The form and the browser both hold the token; a foreign page can't make them agree.
    String token = desk.sessions().token();
    Guard.setCookie(ctx, COOKIE, token);
    pages.show(ctx, "sign-in", Map.of("to", to, "said", said, "token", token));
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
    // A name that can't be one is counted as one, so that many of them don't fill the store.
    Duration wait = desk.attempts().take(Accounts.isName(name) ? name : "", ctx.ip());
    if (!wait.isZero()) {
      ctx.status(HttpStatus.TOO_MANY_REQUESTS);
      ctx.header("Retry-After", Long.toString(wait.toSeconds() + 1));
      form(
          ctx,
          to,
          "Too many attempts. Wait " + (wait.toMinutes() + 1) + " minutes before the next one.");
      return;
    }
    if (!desk.accounts().matches(name, password)) {
      ctx.status(HttpStatus.UNAUTHORIZED);
      form(ctx, to, "Name and password do not belong together.");
      return;
    }
    desk.attempts().succeeded(name);
    Guard.setCookie(ctx, COOKIE, "");
    guard.begin(ctx, name);
    ctx.redirect(to, HttpStatus.SEE_OTHER);
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
