package standstill.web;

import io.javalin.http.Context;
import java.util.Map;
import standstill.guide.Course;
import standstill.store.Edition;
import standstill.store.Pastes;

/** The walk, one step at a time; without a log it begins with what is seen. */
final class WalkPage {
  private final Pages pages;
  private final Pastes pastes;

  WalkPage(Pages pages, Pastes pastes) {
    this.pages = pages;
    this.pastes = pastes;
  }

  void show(Context ctx) {
    Edition edition = InUse.edition(ctx);
    WalkPlace place = WalkPlace.of(ctx, edition, pastes);
    Course course = WalkAddress.read(ctx, edition.base());
    boolean begun = place.log() || ctx.queryParam("begun") != null;
    if (!begun && ctx.queryParam("stage") == null) {
      pages.show(ctx, "sights", Map.of("v", SightsView.of(edition.base())));
    } else if (!begun) {
      pages.show(
          ctx, "symptoms", Map.of("v", SymptomsView.of(edition.base(), edition.guide(), course)));
    } else {
      pages.show(
          ctx, "walk", Map.of("v", WalkView.of(edition.base(), edition.guide(), place, course)));
    }
  }
}
