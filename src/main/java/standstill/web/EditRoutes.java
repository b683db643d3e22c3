package standstill.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import standstill.edit.Refused;
import standstill.store.BaseInUse;
import standstill.store.Pastes;

/** The addresses of editing; a server without an {@link EditDesk} has none of them. */
final class EditRoutes {
  private static final Logger LOG = LoggerFactory.getLogger(EditRoutes.class);

  private EditRoutes() {}

  static void install(
      RoutesConfig routes, EditDesk desk, BaseInUse inUse, Pastes pastes, Pages pages) {
    Guard guard = new Guard(pages, desk);
    SignInPage door = new SignInPage(pages, guard, desk);
    ChangesPage changes = new ChangesPage(guard, desk);
    DraftPage drafts = new DraftPage(guard, desk, pastes);
    NewEntryPage fresh = new NewEntryPage(guard, desk, pastes);
    NewBootPage boot = new NewBootPage(guard, desk, pastes);
    ProposalPage proposals = new ProposalPage(guard, desk, inUse);
    HistoryPage history = new HistoryPage(guard, desk);
    routes.get("/sign-in", door::show);
    routes.post("/sign-in", door::enter);
    routes.post("/sign-out", door::leave);
    routes.get("/changes", changes::show);
    routes.get("/edit/files", changes::files);
    routes.get("/edit/entry", drafts::open);
    routes.post("/edit/entry", drafts::take);
    routes.post("/edit/check", drafts::check);
    routes.get("/edit/new", fresh::show);
    routes.post("/edit/new", fresh::create);
    routes.get("/edit/boot", boot::show);
    routes.post("/edit/boot", boot::create);
    routes.get("/edit/draft/{draft}", drafts::show);
    routes.get("/edit/draft/{draft}/effect", drafts::effect);
    routes.post("/edit/draft/{draft}/propose", drafts::propose);
    String change = "/change/{author}/{proposal}";
    routes.get(change, proposals::show);
    routes.get(change + "/effect", proposals::measure);
    routes.post(change + "/edit", drafts::reopen);
    routes.post(change + "/approve", proposals::approve);
    routes.post(change + "/send-back", proposals::sendBack);
    routes.post(change + "/take-back", proposals::takeBack);
    routes.post(change + "/settle", proposals::settle);
    routes.get("/history", history::show);
    routes.get("/history/text", history::text);
    routes.post("/history/restore", history::restore);
    routes.exception(
        NotSignedIn.class,
        (e, ctx) -> {
          String query = ctx.queryString();
          // A form is not sent a second time by itself, so its address is no place to come back to.
          String back =
              ctx.method().name().equals("GET")
                  ? ctx.path() + (query == null ? "" : "?" + query)
                  : "/changes";
          ctx.redirect(
              "/sign-in?to=" + URLEncoder.encode(back, StandardCharsets.UTF_8),
              HttpStatus.SEE_OTHER);
        });
    routes.exception(
        ForbiddenResponse.class,
        (e, ctx) -> {
          ctx.status(HttpStatus.FORBIDDEN);
          pages.show(
              ctx,
              "message",
              Map.of("title", "Not from here", "text", String.valueOf(e.getMessage())));
        });
    routes.exception(IOException.class, (e, ctx) -> failed(ctx, pages, e));
    routes.exception(UncheckedIOException.class, (e, ctx) -> failed(ctx, pages, e));
    routes.exception(
        Refused.class,
        (e, ctx) -> {
          ctx.status(HttpStatus.CONFLICT);
          pages.show(ctx, "message", Map.of("title", "That was not done", "text", e.reason()));
        });
  }

  /** A file could not be read or written: says which and why, and that asking again is safe. */
  private static void failed(Context ctx, Pages pages, Exception e) {
    LOG.warn("{} {} could not be done: {}", ctx.method(), ctx.path(), String.valueOf(e));
    boolean full = reasons(e).contains("No space left") || reasons(e).contains("quota exceeded");
    boolean writes = !ctx.method().name().equals("GET");
    ctx.status(full ? HttpStatus.INSUFFICIENT_STORAGE : HttpStatus.INTERNAL_SERVER_ERROR);
    pages.show(
        ctx,
        "message",
        Map.of(
            "title",
            full ? "The disk is full" : "A file could not be read or written",
            "text",
            (full
                    ? "The server's disk has no room left; make some."
                    : "The server said: " + firstLine(e) + ".")
                + (writes
                    ? " What you sent is either done whole or not at all. Look at its page under"
                        + " Changes, or go back and send it again: what was done already is not"
                        + " done twice."
                    : " Then open this page again.")));
  }

  private static String reasons(@Nullable Throwable e) {
    StringBuilder all = new StringBuilder();
    Throwable each = e;
    for (int i = 0; each != null && i < 10; i++) {
      all.append(each.getMessage()).append('\n');
      each = each.getCause();
    }
    return all.toString();
  }

  private static String firstLine(Exception e) {
    return reasons(e).lines().findFirst().orElse("");
  }
}
