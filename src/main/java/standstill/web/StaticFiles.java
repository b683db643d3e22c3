package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;

/** Style sheet, script and icon. */
final class StaticFiles {
  private static final Map<String, String> TYPES =
      Map.of(
          "standstill.css", "text/css; charset=utf-8",
          "standstill.js", "text/javascript; charset=utf-8",
          "icon.svg", "image/svg+xml");

  private StaticFiles() {}

  static void serve(Context ctx) throws IOException {
    String name = ctx.pathParam("name");
    String type = TYPES.get(name);
    try (InputStream in =
        type == null ? null : StaticFiles.class.getResourceAsStream("/static/" + name)) {
      if (in == null || type == null) {
        throw new NotFoundResponse();
      }
      ctx.contentType(type).header("Cache-Control", "max-age=600").result(in.readAllBytes());
    }
  }
}
