package standstill.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import java.util.Optional;
import standstill.edit.Chronicle;
import standstill.store.BaseInUse;
import standstill.store.Pastes;

/** The table of all addresses. */
final class Routes {
  private static final String SECONDS_TO_WAIT = "10";

  private Routes() {}

  static void install(
      RoutesConfig routes,
      BaseInUse inUse,
      Pastes pastes,
      Turns turns,
      Pages pages,
      Optional<Chronicle> chronicle,
      Optional<EditDesk> desk) {
    HomePage home = new HomePage(pages);
    ReportPage report = new ReportPage(pages, pastes, turns);
    WalkPage walk = new WalkPage(pages, pastes);
    TreePage tree = new TreePage(pages, pastes);
    SummaryPage summary = new SummaryPage(pages, pastes);
    AuthoredWalkPage authored = new AuthoredWalkPage(pages);
    SearchPage find = new SearchPage(pages);
    BrowsePage browse = new BrowsePage(pages);
    EntryPages entries = new EntryPages(pages, chronicle);
    BasePage base = new BasePage(pages, inUse);
    FindingsPage findings = new FindingsPage(pages, inUse.folder());
    routes.before(Headers::secure);
    routes.before(ctx -> InUse.begin(ctx, inUse));
    routes.get("/", home::show);
    routes.post("/diagnose", report::create);
    routes.get("/log/{address}", report::show);
    routes.post("/log/{address}/forget", report::forget);
    for (String place : new String[] {"/walk", "/log/{address}/walk"}) {
      routes.get(place, walk::show);
      routes.get(place + "/tree", tree::show);
      routes.get(place + "/summary", summary::show);
    }
    routes.get("/walks/{id}", authored::show);
    routes.get("/getting-a-log", ctx -> pages.show(ctx, "getting-a-log", Map.of()));
    routes.post("/api/diagnose", new DiagnoseApi(turns)::diagnose);
    routes.get("/search", find::show);
    routes.get("/api/suggest", find::suggest);
    routes.get("/faults", browse::show);
    routes.get("/fault/{id}", entries::fault);
    routes.get("/check/{id}", entries::check);
    routes.get("/symptom/{id}", entries::symptom);
    routes.get("/trails", entries::trails);
    routes.get("/handbook", entries::handbook);
    routes.get("/base/check", findings::show);
    routes.get("/base", base::show);
    routes.get("/files/{name}", StaticFiles::serve);
    desk.ifPresent(d -> EditRoutes.install(routes, d, inUse, pastes, pages));
    routes.exception(TooLarge.class, (e, ctx) -> tooLarge(pages, ctx));
    routes.exception(ContentTooLargeResponse.class, (e, ctx) -> tooLarge(pages, ctx));
    routes.exception(
        NotUnderstood.class,
        (e, ctx) -> message(pages, ctx, HttpStatus.BAD_REQUEST, "That did not work", e.advice()));
    routes.exception(
        Overloaded.class,
        (e, ctx) -> {
          ctx.header("Retry-After", SECONDS_TO_WAIT);
          message(
              pages,
              ctx,
              HttpStatus.SERVICE_UNAVAILABLE,
              "Too much to do at present",
              "Other logs are being read. Wait ten seconds and send this again.");
        });
    routes.error(
        404,
        ctx ->
            message(
                pages,
                ctx,
                HttpStatus.NOT_FOUND,
                "Nothing here",
                "This address holds nothing, or no longer: a pasted log is kept for two hours at"
                    + " the most and is gone when the program ends."));
  }

  private static void tooLarge(Pages pages, Context ctx) {
    message(
        pages,
        ctx,
        HttpStatus.CONTENT_TOO_LARGE,
        "The log is too large",
        "At most "
            + (Server.LARGEST_LOG >> 20)
            + " MB and "
            + Upload.MOST_LINES
            + " lines are read here. Keep the last boot of it, for example"
            + " with: tail -n 20000 boot.log");
  }

  private static void message(
      Pages pages, Context ctx, HttpStatus status, String title, String text) {
    ctx.status(status);
    if (ctx.path().startsWith("/api/")) {
      ctx.json(Map.of("error", title, "advice", text));
    } else {
      pages.show(ctx, "message", Map.of("title", title, "text", text));
    }
  }
}
