package standstill.web;

import io.javalin.http.Context;

/** Headers that go out with every answer. */
final class Headers {
  private Headers() {}

  /** No script or style but our own files, no frames, no referrer, no guessing of types. */
  static void secure(Context ctx) {
    ctx.header(
        "Content-Security-Policy",
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
            + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'");
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "no-referrer");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
    ctx.header("X-Frame-Options", "DENY");
    ctx.header("Cache-Control", "no-store");
  }
}
