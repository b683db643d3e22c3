package standstill.web;

import io.javalin.http.Context;
import java.util.Map;

/** Headers that go out with every answer. */
final class Headers {
  /**
   * No script or style but our own files, no frames, no referrer for other servers, no guessing of
   * types. With "no-referrer" a browser sends "Origin: null" with our own forms too (WHATWG, Fetch,
   * "append a request Origin header"), and the door would refuse them.
   */
  static final Map<String, String> ALL =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
              + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "same-origin",
          "Cross-Origin-Opener-Policy",
          "same-origin",
          "Cross-Origin-Resource-Policy",
          "same-origin",
          "Permissions-Policy",
          "camera=(), microphone=(), geolocation=()",
          "X-Frame-Options",
          "DENY",
          "Cache-Control",
          "no-store");

  private Headers() {}

  /** Sets them. */
  static void secure(Context ctx) {
    ALL.forEach((name, value) -> ctx.header(name, value));
  }
}
