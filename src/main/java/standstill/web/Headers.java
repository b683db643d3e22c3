package standstill.web;

import io.javalin.http.Context;
import java.util.function.BiFunction;

/** Headers that go out with every answer. */
final class Headers {
  private Headers() {}

  /** No script or style but our own files, no frames, no referrer, no guessing of types. */
  static void secure(Context ctx) {
    each(ctx::header);
  }

  /** Gives each header's name and value. */
  static void each(BiFunction<String, String, ?> header) {
    header.apply(
        "Content-Security-Policy",
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
            + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'");
    header.apply("X-Content-Type-Options", "nosniff");
    header.apply("Referrer-Policy", "no-referrer");
    header.apply("Cross-Origin-Opener-Policy", "same-origin");
    header.apply("Cross-Origin-Resource-Policy", "same-origin");
    header.apply("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
    header.apply("X-Frame-Options", "DENY");
    header.apply("Cache-Control", "no-store");
  }
}
