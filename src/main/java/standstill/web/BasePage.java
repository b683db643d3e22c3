package standstill.web;

import io.javalin.http.Context;
import java.util.Map;
import standstill.store.BaseInUse;

/** For those who keep the base: which one is in use, and why the one on disk is not. */
final class BasePage {
  private final Pages pages;
  private final BaseInUse inUse;

  BasePage(Pages pages, BaseInUse inUse) {
    this.pages = pages;
    this.inUse = inUse;
  }

  void show(Context ctx) {
    pages.show(ctx, "base", Map.of("b", BaseView.of(InUse.state(ctx), inUse.folder())));
  }
}
