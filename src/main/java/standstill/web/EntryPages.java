package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Fault;

/** The pages of single entries of the base, the false trails, and the whole base to print. */
final class EntryPages {
  private final Pages pages;

  EntryPages(Pages pages) {
    this.pages = pages;
  }

  void fault(Context ctx) {
    Base base = InUse.edition(ctx).base();
    String id = ctx.pathParam("id");
    Fault fault = base.fault(id).orElseThrow(NotFoundResponse::new);
    if (!fault.id().equals(id)) {
      ctx.redirect("/fault/" + fault.id(), HttpStatus.MOVED_PERMANENTLY);
      return;
    }
    pages.show(ctx, "fault", Map.of("f", FaultView.of(base, fault)));
  }

  void check(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(
        ctx,
        "check",
        Map.of(
            "c",
            base.check(ctx.pathParam("id"))
                .map(check -> CheckView.of(base, check))
                .orElseThrow(NotFoundResponse::new)));
  }

  void symptom(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(
        ctx,
        "symptom",
        Map.of(
            "s",
            base.symptom(ctx.pathParam("id"))
                .map(symptom -> SymptomView.of(base, symptom))
                .orElseThrow(NotFoundResponse::new)));
  }

  void trails(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(ctx, "trails", Map.of("trails", base.trails().stream().map(TrailView::of).toList()));
  }

  void handbook(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(ctx, "handbook", Map.of("h", HandbookView.of(base)));
  }
}
