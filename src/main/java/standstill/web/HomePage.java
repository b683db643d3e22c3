package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import standstill.store.Examples;

/** The first page: the paste box. */
final class HomePage {
  private final Pages pages;

  HomePage(Pages pages) {
    this.pages = pages;
  }

  void show(Context ctx) throws IOException {
    String name = ctx.queryParam("example");
    String text = "";
    if (name != null) {
      text =
          new String(
              Examples.read(name).orElseThrow(NotFoundResponse::new), StandardCharsets.UTF_8);
    }
    pages.show(
        ctx,
        "home",
        Map.of(
            "text",
            text,
            "examples",
            Examples.all(),
            "faults",
            InUse.edition(ctx).base().faults().size(),
            "megabytes",
            Server.LARGEST_LOG >> 20));
  }
}
