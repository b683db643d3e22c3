package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import standstill.account.Accounts;
import standstill.account.Sessions;

/** Who is signed in, and whether a form comes from one of our own pages. */
final class Guard {
  private static final String COOKIE = "standstill-session";

  private final Pages pages;
  private final Sessions sessions;
  private final Accounts accounts;

  Guard(Pages pages, EditDesk desk) {
    this.pages = pages;
    this.sessions = desk.sessions();
    this.accounts = desk.accounts();
  }

  /**
   * Who is signed in; an account that was taken away, or was given another password, is no longer.
   */
  Optional<Sessions.Session> who(Context ctx) {
    String token = ctx.cookie(COOKIE);
    if (token == null) {
      return Optional.empty();
    }
    try {
      Optional<Sessions.Session> session = sessions.find(token);
      return session.isPresent()
              && accounts.mark(session.get().name()).equals(Optional.of(session.get().mark()))
          ? session
          : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Who is signed in, for a page that only such people see. */
  Sessions.Session reader(Context ctx) {
    return who(ctx).orElseThrow(NotSignedIn::new);
  }

  /** Who sent a form; refused unless the form carries the token of that person's session. */
  Sessions.Session writer(Context ctx) {
    Sessions.Session session = reader(ctx);
    String token = ctx.formParam("token");
    if (token == null || !session.owns(token)) {
      throw new ForbiddenResponse(
          "This form does not belong to your session. Open the page anew and send it again.");
    }
    return session;
  }

  void begin(Context ctx, String name, String mark) {
    setCookie(ctx, COOKIE, sessions.begin(name, mark));
  }

  void end(Context ctx) {
    String token = ctx.cookie(COOKIE);
    if (token != null) {
      sessions.end(token);
    }
    setCookie(ctx, COOKIE, "");
  }

  /** A cookie that no script and no other site gets; without a value it is taken away. */
  static void setCookie(Context ctx, String name, String value) {
    setCookie(ctx, name, value, value.isEmpty() ? "; Path=/; Max-Age=0" : "; Path=/");
  }

  /**
   * The same, kept where and as long as it says.
   *
   * @param kept attributes of the cookie (RFC 6265, section 4.1.2)
   */
  static void setCookie(Context ctx, String name, String value, String kept) {
    boolean https = ctx.scheme().equals("https") || "https".equals(ctx.header("X-Forwarded-Proto"));
    ctx.res()
        .addHeader(
            "Set-Cookie",
            name + "=" + value + kept + "; HttpOnly; SameSite=Strict" + (https ? "; Secure" : ""));
  }

  /** Shows a page to somebody who is signed in. */
  void show(Context ctx, Sessions.Session session, String template, Map<String, Object> values) {
    Map<String, Object> all = new HashMap<>(values);
    all.put("me", session.name());
    all.put("token", session.formToken());
    pages.show(ctx, template, all);
  }
}
