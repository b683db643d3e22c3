package standstill.web;

import io.javalin.http.Context;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import standstill.base.Base;
import standstill.store.Findings;

/** What {@code check} says of the base in use, for those who look after it. */
final class FindingsPage {
  private final Pages pages;
  private final Optional<Path> folder;
  private final Findings findings = new Findings(Clock.systemDefaultZone());

  FindingsPage(Pages pages, Optional<Path> folder) {
    this.pages = pages;
    this.folder = folder;
  }

  void show(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(
        ctx,
        "findings",
        Map.of(
            "v",
            FindingsView.of(base, folder.isPresent(), findings.of(base, folder)),
            "address",
            "/base/check"));
  }
}
