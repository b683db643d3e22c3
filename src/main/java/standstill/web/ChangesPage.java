package standstill.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import standstill.account.Sessions;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.edit.Editing;
import standstill.edit.EntryName;
import standstill.edit.Proposal;
import standstill.edit.Refused;

/** All proposals, and all entries that may be edited. */
final class ChangesPage {
  private static final int MOST_ENDED = 50;

  private final Guard guard;
  private final Editing editing;

  ChangesPage(Guard guard, EditDesk desk) {
    this.guard = guard;
    this.editing = desk.editing();
  }

  /** Entries of a folder. */
  public record FolderView(String folder, List<FileView> files) {}

  /** An entry's file. */
  public record FileView(String file, String name, String title) {}

  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    guard.show(
        ctx,
        session,
        "changes",
        Map.of(
            "branch", editing.proposals().branch(),
            "open", views(editing.proposals().open(), session),
            "ended", views(editing.proposals().ended(MOST_ENDED), session)));
  }

  private static List<ProposalView> views(List<Proposal> proposals, Sessions.Session session) {
    return proposals.stream()
        .map(p -> ProposalView.of(p, session.name(), Optional.empty()))
        .toList();
  }

  void files(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    Base base = editing.checker().base(editing.proposals().head());
    Map<String, List<FileView>> folders = new TreeMap<>();
    for (EntryName entry : editing.proposals().entries()) {
      String path = entry.path();
      int slash = path.lastIndexOf('/');
      folders
          .computeIfAbsent(slash < 0 ? "" : path.substring(0, slash), f -> new ArrayList<>())
          .add(new FileView(path, entry.id(), title(base, entry)));
    }
    guard.show(
        ctx,
        session,
        "files",
        Map.of(
            "folders",
            folders.entrySet().stream()
                .map(e -> new FolderView(e.getKey(), e.getValue()))
                .toList()));
  }

  private static String title(Base base, EntryName entry) {
    if (entry.isFault()) {
      return base.fault(entry.id()).map(Fault::title).orElse("");
    }
    return entry.path().startsWith("checks/")
        ? base.check(entry.id()).map(Check::title).orElse("")
        : "";
  }
}
