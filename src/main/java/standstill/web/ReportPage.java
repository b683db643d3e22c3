package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Given;
import standstill.log.BootLog;
import standstill.report.Report;
import standstill.store.Edition;
import standstill.store.Pastes;

/** The page that shows what was found in a pasted log. */
final class ReportPage {
  private final Pages pages;
  private final Pastes pastes;
  private final Turns turns;

  ReportPage(Pages pages, Pastes pastes, Turns turns) {
    this.pages = pages;
    this.pastes = pastes;
    this.turns = turns;
  }

  /** Takes a paste and sends the browser to its page. */
  void create(Context ctx) {
    byte[] bytes = Upload.read(ctx);
    if (bytes.length == 0) {
      throw new NotUnderstood(
          "There was no text. Go back, paste the log or choose a file, and send it again.");
    }
    Edition edition = InUse.edition(ctx);
    String client = Upload.client(ctx);
    Report report =
        turns.take(
            client,
            bytes.length,
            () -> {
              Upload.stillWanted(ctx);
              BootLog log = edition.diagnoser().read(bytes);
              Upload.stillWanted(ctx);
              return edition.diagnoser().diagnose(log, 0);
            });
    Upload.stillWanted(ctx);
    String address = pastes.keep(report, edition, client).orElseThrow(TooLarge::new);
    ctx.redirect("/log/" + address, HttpStatus.SEE_OTHER);
  }

  void show(Context ctx) {
    String address = ctx.pathParam("address");
    Edition edition = InUse.edition(ctx);
    Report report = pastes.get(address, edition).orElseThrow(NotFoundResponse::new);
    int boot = DiagnoseApi.number(ctx, "boot", 0);
    if (boot > report.log().boots().size()) {
      throw new NotFoundResponse();
    }
    if (boot > 0) {
      BootLog log = report.log();
      report =
          turns.take(
              Upload.client(ctx), Turns.size(log), () -> edition.diagnoser().diagnose(log, boot));
    }
    Base base = edition.base();
    Set<String> said = SystemView.said(ctx, base);
    report = report.saying(base, said);
    boolean proofOnly = "proof".equals(ctx.queryParam("lines"));
    pages.show(
        ctx,
        "report",
        Map.of(
            "r",
            ReportView.of(base, report, address, proofOnly),
            "system",
            system(base, report, said),
            "query",
            SystemView.query(said)));
  }

  private static SystemView system(Base base, Report report, Set<String> said) {
    return report
        .diagnosis()
        .map(
            d ->
                SystemView.of(
                    base,
                    ReportView.shown(d).stream().flatMap(c -> c.fault().fixes().stream()).toList(),
                    said,
                    new Given(d.cases(), Map.of())))
        .orElse(SystemView.NONE);
  }

  /** Forgets a paste before its time. */
  void forget(Context ctx) {
    pastes.forget(ctx.pathParam("address"));
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }
}
