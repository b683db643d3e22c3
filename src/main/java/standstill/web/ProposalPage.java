package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import standstill.account.Sessions;
import standstill.edit.Editing;
import standstill.edit.Effect;
import standstill.edit.Proposal;
import standstill.edit.Proposals;
import standstill.edit.Refused;
import standstill.edit.Trials;
import standstill.store.BaseInUse;

/** A proposal, and what can be done about it. */
final class ProposalPage {
  private static final String SECONDS_TO_WAIT = "2";

  private final Guard guard;
  private final Editing editing;
  private final BaseInUse inUse;

  ProposalPage(Guard guard, EditDesk desk, BaseInUse inUse) {
    this.guard = guard;
    this.editing = desk.editing();
    this.inUse = inUse;
  }

  static String id(Context ctx) {
    return ctx.pathParam("author") + "/" + ctx.pathParam("proposal");
  }

  private Proposal proposal(Context ctx) throws IOException, Refused {
    return editing.proposals().find(id(ctx)).orElseThrow(NotFoundResponse::new);
  }

  void show(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    show(ctx, session, proposal(ctx), "", "");
  }

  private void show(
      Context ctx, Sessions.Session session, Proposal proposal, String typed, String said)
      throws IOException, Refused {
    ProposalView view =
        ProposalView.of(proposal, session.name(), editing.proposals().conflict(proposal));
    guard.show(
        ctx,
        session,
        "proposal",
        Map.of(
            "p",
            view,
            "e",
            EffectView.of(trial(proposal)),
            "hasBoots",
            editing.trials().hasBoots(),
            "settled",
            typed.isEmpty() ? view.merged() : typed,
            "said",
            said));
  }

  private Optional<Trials.Trial> trial(Proposal proposal) throws IOException, Refused {
    Optional<Proposals.Current> outcome = editing.proposals().outcome(proposal);
    return outcome.isEmpty()
        ? Optional.empty()
        : editing.trials().find(outcome.get().commit(), proposal.entry(), outcome.get().text());
  }

  /** Measures what a proposal does; the page comes again until it is done. */
  void measure(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.reader(ctx);
    Proposal proposal = proposal(ctx);
    Optional<Proposals.Current> outcome = editing.proposals().outcome(proposal);
    if (outcome.isPresent()
        && editing.trials().hasBoots()
        && editing
            .trials()
            .begin(outcome.get().commit(), proposal.entry(), outcome.get().text())
            .running()) {
      ctx.header("Refresh", SECONDS_TO_WAIT);
      guard.show(ctx, session, "measuring", Map.of("back", "/change/" + proposal.id()));
    } else {
      ctx.redirect("/change/" + proposal.id() + "#effect", HttpStatus.SEE_OTHER);
    }
  }

  void approve(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    Proposal proposal = proposal(ctx);
    Optional<Effect> effect = trial(proposal).flatMap(Trials.Trial::effect);
    if (effect.isEmpty() && editing.trials().hasBoots()) {
      throw new Refused(
          "Look first at what the change does to the labelled boots: have it measured.");
    }
    editing
        .proposals()
        .approve(
            session.name(),
            proposal.id(),
            DraftPage.text(ctx, "tip"),
            effect.map(Effect::summary).orElse(""));
    inUse.reload();
    back(ctx);
  }

  void sendBack(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    editing
        .proposals()
        .sendBack(
            session.name(), id(ctx), DraftPage.text(ctx, "tip"), DraftPage.text(ctx, "reason"));
    back(ctx);
  }

  void takeBack(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    editing.proposals().takeBack(session.name(), id(ctx), DraftPage.text(ctx, "tip"));
    back(ctx);
  }

  /** Settles a conflict; what was typed stays on the page when it can't be taken. */
  void settle(Context ctx) throws IOException, Refused {
    Sessions.Session session = guard.writer(ctx);
    String text = DraftPage.text(ctx, "text").replace("\r\n", "\n");
    try {
      editing
          .proposals()
          .settle(
              session.name(),
              id(ctx),
              DraftPage.text(ctx, "tip"),
              DraftPage.text(ctx, "head"),
              text,
              DraftPage.text(ctx, "reason"));
      back(ctx);
    } catch (Refused e) {
      ctx.status(HttpStatus.CONFLICT);
      show(ctx, session, proposal(ctx), text, e.reason());
    }
  }

  private static void back(Context ctx) {
    ctx.redirect("/change/" + id(ctx), HttpStatus.SEE_OTHER);
  }
}
