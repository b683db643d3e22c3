package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Given;
import standstill.edit.Chronicle;
import standstill.edit.EntryName;
import standstill.store.Edition;

/** The pages of single entries of the base, the false trails, and the whole base to print. */
final class EntryPages {
  private final Pages pages;
  private final Optional<Chronicle> chronicle;

  EntryPages(Pages pages, Optional<Chronicle> chronicle) {
    this.pages = pages;
    this.chronicle = chronicle;
  }

  /** A change of an entry; the date alone, as git has it in its author's words. */
  public record ChangeView(String on, String who, String why) {}

  void fault(Context ctx) {
    Base base = InUse.edition(ctx).base();
    String id = ctx.pathParam("id");
    Fault fault = base.fault(id).orElseThrow(NotFoundResponse::new);
    if (!fault.id().equals(id)) {
      ctx.redirect("/fault/" + fault.id(), HttpStatus.MOVED_PERMANENTLY);
      return;
    }
    Set<String> said = SystemView.said(ctx, base);
    Given given = Given.NOTHING.saying(base, said);
    pages.show(
        ctx,
        "fault",
        Map.of(
            "f",
            FaultView.of(InUse.edition(ctx), fault, given),
            "system",
            SystemView.of(base, fault.fixes(), said, given),
            "changes",
            changes(fault)));
  }

  private List<ChangeView> changes(Fault fault) {
    return chronicle
        .flatMap(c -> EntryName.ofFault(fault.stage().word(), fault.id()).map(c::of))
        .orElse(List.of())
        .stream()
        .map(v -> new ChangeView(v.when().toString().substring(0, 10), v.who(), v.why()))
        .toList();
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
    Edition edition = InUse.edition(ctx);
    pages.show(
        ctx,
        "symptom",
        Map.of(
            "s",
            edition
                .base()
                .symptom(ctx.pathParam("id"))
                .map(symptom -> SymptomView.of(edition, symptom))
                .orElseThrow(NotFoundResponse::new)));
  }

  void trails(Context ctx) {
    Base base = InUse.edition(ctx).base();
    pages.show(ctx, "trails", Map.of("trails", base.trails().stream().map(TrailView::of).toList()));
  }

  void handbook(Context ctx) {
    pages.show(ctx, "handbook", Map.of("h", HandbookView.of(InUse.edition(ctx))));
  }
}
