package standstill.web;

import java.util.List;
import standstill.edit.Checker;
import standstill.edit.EntryName;
import standstill.log.BootLog;
import standstill.rank.Cause;
import standstill.report.Diagnoser;
import standstill.report.Evidence;
import standstill.report.Percent;
import standstill.report.Report;

/**
 * A text diagnosed with a draft and without it.
 *
 * @param before without the draft
 * @param after with it
 * @param proof lines that the draft's own fault rests on
 */
public record TriedView(SaidView before, SaidView after, List<Evidence> proof) {
  private static final int SHOWN = 4;

  /** What was said, with the first causes. */
  public record SaidView(String verdict, List<CauseView> causes) {}

  /** A cause; own when it is the draft's. */
  public record CauseView(String title, String percent, boolean own) {}

  static TriedView of(Checker.Checked checked, EntryName entry, BootLog log) {
    Report before = new Diagnoser(checked.before()).diagnose(log, 0);
    Report after = new Diagnoser(checked.base()).diagnose(log, 0);
    List<Evidence> proof =
        after.diagnosis().stream()
            .flatMap(d -> d.ranking().causes().stream())
            .filter(cause -> isOwn(cause, entry))
            .flatMap(cause -> Evidence.reasonsFor(cause).stream())
            .toList();
    return new TriedView(said(before, entry), said(after, entry), proof);
  }

  private static boolean isOwn(Cause cause, EntryName entry) {
    return entry.isFault() && cause.fault().id().equals(entry.id());
  }

  private static SaidView said(Report report, EntryName entry) {
    List<CauseView> causes =
        report.diagnosis().stream()
            .flatMap(d -> d.ranking().causes().stream())
            .limit(SHOWN)
            .map(
                cause ->
                    new CauseView(
                        cause.fault().title(),
                        Percent.of(cause.probability()),
                        isOwn(cause, entry)))
            .toList();
    String verdict =
        switch (report.verdict()) {
          case "stalled" -> "a stall with a cause of the base";
          case "unlisted" -> "a cause that is not in the base";
          case "no-stall" -> "no stall";
          default -> "not a boot log: " + report.reason();
        };
    return new SaidView(verdict, causes);
  }
}
