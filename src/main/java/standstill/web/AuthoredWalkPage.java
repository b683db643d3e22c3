package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Walk;

/** A walk written by hand, one step at a time; the answers stand in the address. */
final class AuthoredWalkPage {
  private final Pages pages;

  AuthoredWalkPage(Pages pages) {
    this.pages = pages;
  }

  void show(Context ctx) {
    Base base = InUse.edition(ctx).base();
    Walk walk = base.walk(ctx.pathParam("id")).orElseThrow(NotFoundResponse::new);
    Map<String, List<String>> given = ctx.queryParamMap();
    pages.show(ctx, "authored", Map.of("v", AuthoredWalkView.of(base, walk, given)));
  }
}
