package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import standstill.account.Sessions;
import standstill.edit.Editing;
import standstill.edit.EntryName;
import standstill.edit.Proposal;
import standstill.edit.Refused;
import standstill.edit.Version;

/** The texts that an entry had, and bringing one of them back. */
final class HistoryPage {
  private final Guard guard;
  private final Editing editing;

  HistoryPage(Guard guard, EditDesk desk) {
    this.guard = guard;
    this.editing = desk.editing();
  }

  /** A text that the entry had. */
  public record VersionView(
      String commit, String who, String when, String why, String approvedBy, boolean now) {}

  private List<VersionView> versions(EntryName entry) throws IOException, Refused {
    List<Version> versions = editing.proposals().history(entry);
    if (versions.isEmpty()) {
      throw new NotFoundResponse();
    }
    Version newest = versions.get(0);
    return versions.stream()
        .map(
            v ->
                new VersionView(
                    v.commit(),
                    v.who(),
                    ProposalView.time(v.when()),
                    v.why(),
                    v.approvedBy(),
                    v.equals(newest)))
        .toList();
  }

  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    EntryName entry = DraftPage.entry(ctx.queryParam("file"));
    guard.show(
        ctx,
        session,
        "history",
        Map.of("file", entry.path(), "name", entry.id(), "versions", versions(entry)));
  }

  void text(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    EntryName entry = DraftPage.entry(ctx.queryParam("file"));
    String commit = ctx.queryParam("version");
    VersionView version =
        versions(entry).stream()
            .filter(v -> v.commit().equals(commit))
            .findFirst()
            .orElseThrow(NotFoundResponse::new);
    String text =
        editing.proposals().textAt(entry, version.commit()).orElseThrow(NotFoundResponse::new);
    String now = editing.proposals().current(entry).text();
    guard.show(
        ctx,
        session,
        "version",
        Map.of(
            "file", entry.path(),
            "name", entry.id(),
            "v", version,
            "text", text,
            "same", text.equals(now),
            "diff", DiffView.of(now, text)));
  }

  void restore(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    EntryName entry = DraftPage.entry(ctx.formParam("file"));
    Proposal proposal =
        editing
            .proposals()
            .restore(
                session.name(),
                entry,
                DraftPage.text(ctx, "version"),
                DraftPage.text(ctx, "reason"));
    ctx.redirect("/change/" + proposal.id(), HttpStatus.SEE_OTHER);
  }
}
