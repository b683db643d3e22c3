package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import standstill.account.Sessions;
import standstill.base.Base;
import standstill.base.Label;
import standstill.base.Stage;
import standstill.disguise.Disguise;
import standstill.edit.BootText;
import standstill.edit.Draft;
import standstill.edit.Editing;
import standstill.edit.EntryName;
import standstill.edit.Proposals;
import standstill.edit.Refused;
import standstill.edit.Skeleton;
import standstill.log.BootLog;
import standstill.report.Diagnoser;
import standstill.report.Report;
import standstill.store.Pastes;

/** A log becomes a labelled boot: what is known of it, and its text without what names somebody. */
final class NewBootPage {
  /** Longest log in the form, in characters; the label and later additions need room too. */
  private static final int LONGEST_LOG = BootText.LONGEST / 2;

  private static final String TOO_LONG =
      "The log is longer than "
          + LONGEST_LOG
          + " characters. Keep the lines of one boot up to where it stopped.";
  private static final List<String> FIELDS =
      List.of("name", "label", "also", "general", "stage", "cut", "made", "licence", "log");

  private final Guard guard;
  private final Editing editing;
  private final Sessions tokens;
  private final Pastes pastes;

  NewBootPage(Guard guard, EditDesk desk, Pastes pastes) {
    this.guard = guard;
    this.editing = desk.editing();
    this.tokens = desk.sessions();
    this.pastes = pastes;
  }

  /** A label to choose: its word, and what it means. */
  public record LabelView(String word, String title) {}

  /** Shows the form; a pasted log stands in it with its identifiers replaced. */
  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    String address = ctx.queryParam("log");
    Optional<Report> report =
        address == null || !DraftPage.isPaste(address)
            ? Optional.empty()
            : pastes.get(address, InUse.edition(ctx));
    Map<String, String> typed = new TreeMap<>();
    FIELDS.forEach(field -> typed.put(field, ""));
    typed.put("licence", "CC0-1.0");
    boolean tooLong = report.map(r -> Turns.size(r.log())).orElse(0L) > LONGEST_LOG;
    Optional<Disguise> disguise = report.filter(r -> !tooLong).map(r -> Disguise.of(r.log()));
    disguise.ifPresent(d -> typed.put("log", disguised(d, report.orElseThrow().log())));
    report.flatMap(Report::diagnosis).ifPresent(d -> typed.put("stage", d.trace().stage().word()));
    show(ctx, session, typed, tooLong ? TOO_LONG : "", disguise);
  }

  private void show(Context ctx, Sessions.Session session, Map<String, String> typed, String said)
      throws IOException, Refused {
    show(ctx, session, typed, said, Optional.empty());
  }

  private void show(
      Context ctx,
      Sessions.Session session,
      Map<String, String> typed,
      String said,
      Optional<Disguise> disguise)
      throws IOException, Refused {
    Base base = editing.checker().base(editing.proposals().head());
    guard.show(
        ctx,
        session,
        "new-boot",
        Map.of(
            "t",
            typed,
            "said",
            said,
            "replaced",
            disguise.map(Disguise::account).orElse(""),
            "lookAt",
            disguise.map(Disguise::lookAt).orElse(List.of()),
            "stages",
            Arrays.stream(Stage.values()).map(Stage::word).toList(),
            "cuts",
            Label.CUTS,
            "labels",
            Stream.concat(
                    Stream.of(
                        new LabelView(Label.HEALTHY, "nothing stopped it"),
                        new LabelView(Label.UNLISTED, "a cause that is not in the base")),
                    base.faults().stream().map(f -> new LabelView(f.id(), f.title())))
                .toList()));
  }

  private static String disguised(Disguise disguise, BootLog log) {
    return String.join("\n", disguise.apply(log.rawLines())) + "\n";
  }

  /** Replaces the identifiers of a log, or begins a draft of the labelled boot. */
  void create(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    Map<String, String> typed = new TreeMap<>();
    FIELDS.forEach(field -> typed.put(field, DraftPage.text(ctx, field).strip()));
    typed.put("log", text(DraftPage.text(ctx, "log")));
    String log = typed.getOrDefault("log", "");
    if (log.length() > LONGEST_LOG) {
      typed.put("log", "");
      show(ctx, session, typed, TOO_LONG);
      return;
    }
    if (DraftPage.text(ctx, "do").equals("disguise")) {
      Base base = editing.checker().base(editing.proposals().head());
      BootLog read = new Diagnoser(base).read(log.getBytes(StandardCharsets.UTF_8));
      Disguise disguise = Disguise.of(read);
      typed.put("log", disguised(disguise, read).strip() + "\n");
      show(ctx, session, typed, "", Optional.of(disguise));
      return;
    }
    Optional<EntryName> entry = EntryName.of("boots/" + typed.get("name") + ".yaml");
    if (entry.isEmpty() || log.isBlank()) {
      show(
          ctx,
          session,
          typed,
          entry.isEmpty()
              ? "Give it a name of lower-case words joined by hyphens, sixty characters at the most."
              : "There is no log.");
      return;
    }
    if (editing.proposals().isTaken(entry.get())) {
      show(ctx, session, typed, "There is a labelled boot of this name already.");
      return;
    }
    Proposals.Current now = editing.proposals().current(entry.get());
    Draft draft =
        new Draft(
            tokens.token(),
            session.name(),
            entry.get(),
            now.commit(),
            new BootText(label(entry.get(), typed), log).joined(),
            "",
            "",
            List.of(),
            "");
    editing.drafts().keep(draft);
    ctx.redirect("/edit/draft/" + draft.id() + "#problems", HttpStatus.SEE_OTHER);
  }

  private static String label(EntryName entry, Map<String, String> typed) {
    return Skeleton.label(
        entry,
        typed.getOrDefault("label", ""),
        ids(typed.getOrDefault("also", "")),
        ids(typed.getOrDefault("general", "")),
        typed.getOrDefault("stage", ""),
        typed.getOrDefault("cut", ""),
        typed.getOrDefault("made", ""),
        typed.getOrDefault("licence", ""));
  }

  private static List<String> ids(String typed) {
    return Arrays.stream(typed.split("[\\s,]+")).filter(id -> !id.isEmpty()).toList();
  }

  /**
   * A log as it can be kept: line ends of one kind, and no control characters but those of logs.
   */
  private static String text(String typed) {
    return typed
        .replace("\r\n", "\n")
        .replace('\r', '\n')
        .replaceAll("[\\p{Cntrl}&&[^\\n\\t\\x1b]]", "");
  }
}
