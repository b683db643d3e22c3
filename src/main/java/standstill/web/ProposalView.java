package standstill.web;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import standstill.edit.Proposal;
import standstill.edit.ThreeTexts;

/**
 * A proposal, ready for its template.
 *
 * @param standing its word
 * @param standingText the same for people
 * @param own whether the reader is its author
 * @param wrote whether the reader wrote on its text, and so can't approve it
 * @param columns the three texts of a conflict; empty when there is none
 * @param merged a text to settle the conflict from
 * @param head the base's commit that a settled text rests on
 */
public record ProposalView(
    String id,
    String author,
    String file,
    String name,
    String tip,
    String reason,
    String standing,
    String standingText,
    String since,
    boolean isNew,
    boolean open,
    boolean own,
    boolean wrote,
    List<StepView> steps,
    DiffView diff,
    List<DiffView.ColumnView> columns,
    String merged,
    String head) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** Something that happened. */
  public record StepView(String who, String when, String what, String why) {}

  static String time(Instant when) {
    return TIME.format(when);
  }

  static ProposalView of(Proposal proposal, String reader, Optional<ThreeTexts> conflict) {
    return new ProposalView(
        proposal.id(),
        proposal.author(),
        proposal.entry().path(),
        proposal.entry().id(),
        proposal.tip(),
        proposal.reason(),
        proposal.standing().word(),
        words(proposal.standing()),
        time(proposal.since()),
        proposal.isNew(),
        proposal.standing().isOpen(),
        proposal.author().equals(reader),
        proposal.writers().contains(reader),
        proposal.steps().stream()
            .map(s -> new StepView(s.who(), time(s.when()), s.what(), s.why()))
            .toList(),
        DiffView.of(proposal.before(), proposal.text()),
        conflict.map(DiffView::columns).orElse(List.of()),
        conflict.map(ThreeTexts::merged).orElse(""),
        conflict.map(ThreeTexts::head).orElse(""));
  }

  private static String words(Proposal.Standing standing) {
    return switch (standing) {
      case WAITING -> "waits for a second person";
      case CONFLICT -> "clashes with a newer change";
      case SENT_BACK -> "sent back to its author";
      case TAKEN_BACK -> "taken back";
      case MERGED -> "in the base";
    };
  }
}
