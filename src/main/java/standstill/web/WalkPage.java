package standstill.web;

import io.javalin.http.Context;
import java.util.Map;
import standstill.guide.Course;
import standstill.guide.Guide;
import standstill.report.Diagnoser;
import standstill.store.Pastes;

/** The walk, one step at a time; without a log it begins with what is seen. */
final class WalkPage {
  private final Pages pages;
  private final Diagnoser diagnoser;
  private final Guide guide;
  private final Pastes pastes;

  WalkPage(Pages pages, Diagnoser diagnoser, Guide guide, Pastes pastes) {
    this.pages = pages;
    this.diagnoser = diagnoser;
    this.guide = guide;
    this.pastes = pastes;
  }

  void show(Context ctx) {
    WalkPlace place = WalkPlace.of(ctx, diagnoser, guide, pastes);
    Course course = WalkAddress.read(ctx, diagnoser.base());
    boolean begun = place.log() || ctx.queryParam("begun") != null;
    if (!begun && ctx.queryParam("stage") == null) {
      pages.show(ctx, "sights", Map.of("v", SightsView.of()));
    } else if (!begun) {
      pages.show(ctx, "symptoms", Map.of("v", SymptomsView.of(diagnoser.base(), guide, course)));
    } else {
      pages.show(ctx, "walk", Map.of("v", WalkView.of(diagnoser.base(), guide, place, course)));
    }
  }
}
