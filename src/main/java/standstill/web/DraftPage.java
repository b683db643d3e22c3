package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import standstill.account.Sessions;
import standstill.edit.Checker;
import standstill.edit.Draft;
import standstill.edit.Drafts;
import standstill.edit.Editing;
import standstill.edit.EntryForm;
import standstill.edit.EntryName;
import standstill.edit.Proposal;
import standstill.edit.Proposals;
import standstill.edit.Refused;
import standstill.edit.Trials;
import standstill.log.BootLog;
import standstill.mine.Generalised;
import standstill.report.Diagnoser;
import standstill.report.Report;
import standstill.store.Pastes;

/** Editing an entry: fields and text, trying it out, and what the change does. */
final class DraftPage {
  private static final String SECONDS_TO_WAIT = "2";

  private final Guard guard;
  private final Editing editing;
  private final Sessions tokens;
  private final Pastes pastes;

  DraftPage(Guard guard, EditDesk desk, Pastes pastes) {
    this.guard = guard;
    this.editing = desk.editing();
    this.tokens = desk.sessions();
    this.pastes = pastes;
  }

  /** Whether what a draft is tried on is the address of a paste rather than a text. */
  static boolean isPaste(String log) {
    return log.length() == 32
        && log.chars().allMatch(c -> (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'));
  }

  /** Opens an entry as the base has it. */
  void open(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    EntryName entry = entry(ctx.queryParam("file"));
    Proposals.Current now = editing.proposals().current(entry);
    if (now.text().isEmpty()) {
      throw new NotFoundResponse();
    }
    String log = ctx.queryParam("log");
    show(
        ctx,
        session,
        new Draft(
            "",
            session.name(),
            entry,
            now.commit(),
            now.text(),
            "",
            "",
            List.of(),
            log != null && isPaste(log) ? log : ""));
  }

  /** Opens one's own proposal to go on with it. */
  void reopen(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    Proposal proposal =
        editing
            .proposals()
            .find(ProposalPage.id(ctx))
            .filter(p -> p.author().equals(session.name()) && p.standing().isOpen())
            .orElseThrow(NotFoundResponse::new);
    Draft draft =
        new Draft(
            tokens.token(),
            session.name(),
            proposal.entry(),
            editing.proposals().current(proposal.entry()).commit(),
            proposal.text(),
            proposal.reason(),
            proposal.id() + " " + proposal.tip(),
            List.of(),
            "");
    editing.drafts().keep(draft);
    ctx.redirect("/edit/draft/" + draft.id(), HttpStatus.SEE_OTHER);
  }

  /** Shows a draft. */
  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    show(ctx, session, draft(ctx, session));
  }

  private void show(Context ctx, Sessions.Session session, Draft draft)
      throws IOException, Refused {
    Checker.Checked checked = check(draft);
    boolean isNew = editing.proposals().current(draft.entry()).text().isEmpty();
    guard.show(
        ctx,
        session,
        "edit",
        Map.of(
            "d",
            DraftView.of(
                draft, isNew, checked, editing.proposals().open(), tried(ctx, draft, checked))));
  }

  private Checker.Checked check(Draft draft) throws IOException {
    return editing.checker().check(draft.from(), draft.entry(), draft.text());
  }

  private Optional<TriedView> tried(Context ctx, Draft draft, Checker.Checked checked) {
    if (draft.entry().isBoot() || draft.log().isEmpty() || checked.firstError().isPresent()) {
      return Optional.empty();
    }
    Optional<BootLog> log =
        isPaste(draft.log())
            ? pastes.get(draft.log(), InUse.edition(ctx)).map(Report::log)
            : Optional.of(
                new Diagnoser(checked.before()).read(draft.log().getBytes(StandardCharsets.UTF_8)));
    return log.map(l -> TriedView.of(checked, draft.entry(), l));
  }

  /** Takes what was typed, and does what was asked with it. */
  void take(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    Draft draft = typed(ctx, session);
    String to = "/edit/draft/" + draft.id();
    switch (text(ctx, "do")) {
      case "effect" -> to += "/effect";
      case "sign" -> draft = withSign(draft, text(ctx, "add-line"));
      case "try" -> {
        String log = text(ctx, "log");
        draft = log.isBlank() ? draft : draft.withLog(log);
        to += "#tried";
      }
      default -> to += "#problems";
    }
    editing.drafts().keep(draft);
    ctx.redirect(to, HttpStatus.SEE_OTHER);
  }

  private Draft typed(Context ctx, Sessions.Session session) throws IOException, Refused {
    EntryName entry = entry(ctx.formParam("file"));
    String from = text(ctx, "from");
    String text = text(ctx, "text").replace("\r\n", "\n");
    if (text.length() > Proposals.longest(entry)
        || text(ctx, "log").length() > Drafts.LONGEST_LOG) {
      throw new NotUnderstood("The text is too long.");
    }
    if (!editing.proposals().knows(from)) {
      throw new NotUnderstood("The form names a state of the base that it has not had.");
    }
    Optional<Draft> old = editing.drafts().find(text(ctx, "draft"), session.name());
    EntryForm.Written written =
        EntryForm.write(
            entry,
            text,
            editing.checker().base(from),
            path -> ctx.formParam("f." + path),
            path -> ctx.formParam("was." + path));
    return old.filter(d -> d.entry().equals(entry))
        .map(d -> d.withText(written.text(), d.reason(), written.notes()))
        .orElseGet(
            () ->
                new Draft(
                    tokens.token(),
                    session.name(),
                    entry,
                    from,
                    written.text(),
                    "",
                    "",
                    written.notes(),
                    isPaste(text(ctx, "paste")) ? text(ctx, "paste") : ""));
  }

  private static Draft withSign(Draft draft, String line) {
    String message = line.strip();
    Generalised sign = message.isEmpty() ? null : Generalised.of(message);
    List<String> notes = new ArrayList<>(draft.notes());
    if (sign == null || !sign.tells()) {
      notes.add("The line has no word that a sign could be made of.");
      return draft.withText(draft.text(), draft.reason(), notes);
    }
    Optional<String> text = EntryForm.withSign(draft.text(), sign.pattern().toString(), message);
    if (text.isEmpty()) {
      notes.add("The text has no list of signs to which one could be added.");
    }
    return draft.withText(text.orElse(draft.text()), draft.reason(), notes);
  }

  /** Says what is wrong with a text while it is typed. */
  void check(Context ctx) throws IOException, Refused {
    guard.writer(ctx);
    EntryName entry = entry(ctx.formParam("file"));
    String from = text(ctx, "from");
    String text = text(ctx, "text").replace("\r\n", "\n");
    if (text.length() > Proposals.longest(entry) || !editing.proposals().knows(from)) {
      throw new NotUnderstood("The text is too long, or the base has not had this state.");
    }
    ctx.json(
        Map.of(
            "problems",
            editing.checker().check(from, entry, text).problems().stream()
                .map(p -> DraftView.problem(p, entry.path()))
                .toList()));
  }

  /** Shows what a draft's change does, or that it is being measured. */
  void effect(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    Draft draft = draft(ctx, session);
    Checker.Checked checked = check(draft);
    Trials trials = editing.trials();
    Optional<Trials.Trial> trial =
        checked.firstError().isPresent() || !trials.hasBoots()
            ? Optional.empty()
            : Optional.of(trials.begin(draft.from(), draft.entry(), draft.text()));
    Proposals.Current now = editing.proposals().current(draft.entry());
    String before = editing.proposals().textAt(draft.entry(), draft.from()).orElse("");
    EffectView effect = EffectView.of(trial);
    if (effect.state().equals("running")) {
      ctx.header("Refresh", SECONDS_TO_WAIT);
    }
    guard.show(
        ctx,
        session,
        "effect",
        Map.of(
            "id", draft.id(),
            "file", draft.entry().path(),
            "reason", draft.reason(),
            "errors", checked.problems().stream().filter(p -> p.isError()).count(),
            "changedMeanwhile", !now.text().equals(before),
            "hasBoots", trials.hasBoots(),
            "revises", !draft.revises().isEmpty(),
            "diff", DiffView.of(before, draft.text()),
            "e", effect));
  }

  /** Puts a draft forward. */
  void propose(Context ctx) throws IOException {
    Sessions.Session session = guard.writer(ctx);
    Draft draft = draft(ctx, session);
    String reason = text(ctx, "reason");
    try {
      Proposals proposals = editing.proposals();
      Proposal made;
      if (draft.revises().isEmpty()) {
        made = proposals.propose(session.name(), draft.entry(), draft.from(), draft.text(), reason);
      } else {
        String[] revised = draft.revises().split(" ", 2);
        made = proposals.revise(session.name(), revised[0], revised[1], draft.text(), reason);
      }
      editing.drafts().forget(draft.id());
      ctx.redirect("/change/" + made.id(), HttpStatus.SEE_OTHER);
    } catch (Refused e) {
      editing.drafts().keep(draft.withText(draft.text(), reason, List.of(e.reason())));
      ctx.redirect("/edit/draft/" + draft.id(), HttpStatus.SEE_OTHER);
    }
  }

  private Draft draft(Context ctx, Sessions.Session session) {
    return editing
        .drafts()
        .find(ctx.pathParam("draft"), session.name())
        .orElseThrow(NotFoundResponse::new);
  }

  static EntryName entry(@Nullable String file) {
    return EntryName.of(file == null ? "" : file).orElseThrow(NotFoundResponse::new);
  }

  static String text(Context ctx, String key) {
    String value = ctx.formParam(key);
    return value == null ? "" : value;
  }
}
