package standstill.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import standstill.disguise.Disguise;
import standstill.disguise.LookAt;
import standstill.guide.Course;
import standstill.report.WalkSummary;
import standstill.store.Edition;
import standstill.store.Pastes;

/** The summary of a walk, to copy: as a page, or alone as text, Markdown or JSON. */
final class SummaryPage {
  private final Pages pages;
  private final Pastes pastes;

  SummaryPage(Pages pages, Pastes pastes) {
    this.pages = pages;
    this.pastes = pastes;
  }

  /**
   * What the page shows.
   *
   * @param walk address of the walk
   * @param replaced what was replaced in the log, counted in words; empty for nothing
   * @param lookAt what the text holds that may name somebody
   */
  public record SummaryView(
      String text,
      String markdown,
      String json,
      String walk,
      String self,
      String replaced,
      List<LookAt> lookAt) {}

  void show(Context ctx) {
    Edition edition = InUse.edition(ctx);
    WalkPlace place = WalkPlace.of(ctx, edition, pastes);
    Course course = WalkAddress.read(ctx, edition.base());
    Disguise disguise = place.disguise();
    WalkSummary summary =
        new WalkSummary(
            edition.base(),
            course,
            place.guidance(edition.guide(), course),
            place.report(),
            disguise::apply);
    String as = ctx.queryParam("as");
    switch (as == null ? "page" : as) {
      case "page" ->
          pages.show(
              ctx,
              "summary",
              Map.of(
                  "v",
                  new SummaryView(
                      summary.text(),
                      summary.markdown(),
                      summary.json(),
                      place.to(course),
                      place.to("summary", course),
                      disguise.account(),
                      disguise.lookAt(summary.text()))));
      case "text" -> ctx.contentType("text/plain; charset=utf-8").result(summary.text());
      case "markdown" -> ctx.contentType("text/markdown; charset=utf-8").result(summary.markdown());
      case "json" -> ctx.contentType("application/json; charset=utf-8").result(summary.json());
      default -> throw new NotUnderstood("'as' is page, text, markdown or json.");
    }
  }
}
