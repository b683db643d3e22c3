package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import standstill.account.Sessions;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Stage;
import standstill.disguise.Disguise;
import standstill.edit.Draft;
import standstill.edit.Editing;
import standstill.edit.EntryForm;
import standstill.edit.EntryName;
import standstill.edit.Proposals;
import standstill.edit.Refused;
import standstill.edit.Skeleton;
import standstill.log.LogLine;
import standstill.mine.Generalised;
import standstill.report.Report;
import standstill.store.Pastes;

/** A line of a log that nothing explains becomes a sign, of a new fault or of one that is there. */
final class NewEntryPage {
  private static final int LONGEST_LINE = 2_000;

  private final Guard guard;
  private final Editing editing;
  private final Sessions tokens;
  private final Pastes pastes;

  NewEntryPage(Guard guard, EditDesk desk, Pastes pastes) {
    this.guard = guard;
    this.editing = desk.editing();
    this.tokens = desk.sessions();
    this.pastes = pastes;
  }

  /** A word to choose. */
  public record ChoiceView(String word, String title, boolean chosen) {}

  /** Faults of a stage. */
  public record StageView(String stage, List<ChoiceView> faults) {}

  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    String log = ctx.queryParam("log");
    Report report =
        log == null || !DraftPage.isPaste(log)
            ? null
            : pastes.get(log, InUse.edition(ctx)).orElse(null);
    // The line becomes part of the base and its history, so nobody's names go with it.
    String line =
        report == null
            ? ""
            : line(report, DiagnoseApi.number(ctx, "line", 0))
                .map(l -> Disguise.of(report.log()).apply(l.message()))
                .orElse("");
    String stage =
        report == null ? "" : report.diagnosis().map(d -> d.trace().stage().word()).orElse("");
    show(
        ctx,
        session,
        Map.of(
            "log",
            report == null || log == null ? "" : log,
            "line",
            line,
            "stage",
            stage,
            "title",
            "",
            "id",
            "",
            "part",
            "",
            "family",
            report == null ? "" : report.log().family()),
        "");
  }

  private void show(Context ctx, Sessions.Session session, Map<String, String> typed, String said)
      throws IOException, Refused {
    Base base = editing.checker().base(editing.proposals().head());
    String line = typed.getOrDefault("line", "");
    Generalised sign = line.isBlank() ? null : Generalised.of(line.strip());
    List<ChoiceView> parts = new ArrayList<>();
    new TreeMap<>(base.scale().parts())
        .forEach((id, title) -> parts.add(choice(id, title, typed.getOrDefault("part", ""))));
    Map<Stage, List<ChoiceView>> faults = new TreeMap<>();
    for (Fault fault : base.faults()) {
      faults
          .computeIfAbsent(fault.stage(), s -> new ArrayList<>())
          .add(new ChoiceView(file(fault), fault.title(), false));
    }
    guard.show(
        ctx,
        session,
        "new-entry",
        Map.of(
            "t",
            typed,
            "said",
            said,
            "pattern",
            sign == null ? "" : sign.pattern().toString(),
            "tells",
            sign == null || sign.tells(),
            "stages",
            Arrays.stream(Stage.values())
                .map(s -> choice(s.word(), s.word(), typed.getOrDefault("stage", "")))
                .toList(),
            "parts",
            parts,
            "families",
            base.families().stream()
                .map(f -> choice(f.id(), f.id(), typed.getOrDefault("family", "")))
                .toList(),
            "faults",
            faults.entrySet().stream()
                .map(e -> new StageView(e.getKey().word(), e.getValue()))
                .toList()));
  }

  private static ChoiceView choice(String word, String title, String chosen) {
    return new ChoiceView(word, title, word.equals(chosen));
  }

  private static String file(Fault fault) {
    return "faults/" + fault.stage().word() + "/" + fault.id() + ".yaml";
  }

  private static Optional<LogLine> line(Report report, int number) {
    return report.log().boots().stream()
        .flatMap(boot -> boot.lines().stream())
        .filter(line -> line.number() == number)
        .findFirst();
  }

  void create(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    Map<String, String> typed = new TreeMap<>();
    for (String key : List.of("log", "line", "stage", "title", "id", "part", "family")) {
      typed.put(key, DraftPage.text(ctx, key).strip());
    }
    String line = typed.getOrDefault("line", "");
    Generalised sign = line.isEmpty() || line.length() > LONGEST_LINE ? null : Generalised.of(line);
    if (sign == null || !sign.tells()) {
      show(ctx, session, typed, "A sign needs a line with at least one telling word.");
      return;
    }
    String log = typed.getOrDefault("log", "");
    boolean extend = DraftPage.text(ctx, "do").equals("extend");
    Optional<EntryName> entry =
        extend
            ? EntryName.of(DraftPage.text(ctx, "fault"))
            : EntryName.ofFault(typed.getOrDefault("stage", ""), typed.getOrDefault("id", ""));
    if (entry.isEmpty()) {
      show(
          ctx,
          session,
          typed,
          "Choose a stage, and an id of lower-case words joined by hyphens that names the cause.");
      return;
    }
    Proposals.Current now = editing.proposals().current(entry.get());
    String pattern = sign.pattern().toString();
    Optional<String> text = Optional.empty();
    if (extend) {
      text = EntryForm.withSign(now.text(), pattern, line);
    } else if (now.text().isEmpty()) {
      text = Optional.of(skeleton(entry.get(), typed, pattern, line, session.name()));
    }
    if (text.isEmpty()) {
      show(
          ctx,
          session,
          typed,
          extend
              ? "No sign could be added to this entry; open it and add one in its text."
              : "There is an entry of this id already.");
      return;
    }
    Draft draft =
        new Draft(
            tokens.token(),
            session.name(),
            entry.get(),
            now.commit(),
            text.get(),
            "",
            "",
            List.of(),
            DraftPage.isPaste(log) ? log : "");
    editing.drafts().keep(draft);
    ctx.redirect("/edit/draft/" + draft.id(), HttpStatus.SEE_OTHER);
  }

  private String skeleton(
      EntryName entry, Map<String, String> typed, String pattern, String line, String who)
      throws IOException, Refused {
    Base base = editing.checker().base(editing.proposals().head());
    String family = typed.getOrDefault("family", "");
    String part = typed.getOrDefault("part", "");
    if (base.family(family).isEmpty() || !base.scale().parts().containsKey(part)) {
      throw new NotFoundResponse();
    }
    return Skeleton.fault(
        entry,
        typed.getOrDefault("title", ""),
        family,
        part,
        pattern,
        line,
        LocalDate.now(ZoneOffset.UTC).toString(),
        who);
  }
}
