package standstill.web;

import java.util.List;
import java.util.Optional;
import standstill.edit.Effect;
import standstill.edit.Trials;
import standstill.report.Percent;

/**
 * What a change does to the labelled boots, ready for its template.
 *
 * @param state {@code none} when nothing was measured, {@code running}, {@code failed} or {@code
 *     done}
 * @param failure why it failed
 */
public record EffectView(
    String state,
    String failure,
    int boots,
    long rightBefore,
    long rightAfter,
    long same,
    List<MovedView> moved,
    List<AddedView> added) {

  /** A boot that comes out otherwise. */
  public record MovedView(
      String boot,
      String label,
      String way,
      String wayText,
      String before,
      String after,
      boolean sameAnswer,
      String percentBefore,
      String percentAfter) {}

  /** A boot that the change brings. */
  public record AddedView(
      String boot,
      String label,
      String said,
      boolean right,
      String percent,
      String stage,
      boolean stageRight) {}

  static EffectView of(Optional<Trials.Trial> trial) {
    if (trial.isEmpty()) {
      return new EffectView("none", "", 0, 0, 0, 0, List.of(), List.of());
    }
    if (trial.get().effect().isEmpty()) {
      String state = trial.get().running() ? "running" : "failed";
      return new EffectView(state, trial.get().failure(), 0, 0, 0, 0, List.of(), List.of());
    }
    Effect effect = trial.get().effect().get();
    return new EffectView(
        "done",
        "",
        effect.boots(),
        effect.rightBefore(),
        effect.rightAfter(),
        effect.boots() - effect.moved().size() - effect.added().size(),
        effect.moved().stream().map(EffectView::moved).toList(),
        effect.added().stream()
            .map(
                a ->
                    new AddedView(
                        a.boot(),
                        a.label(),
                        a.said(),
                        a.right(),
                        Percent.of(a.chance()),
                        a.stage().word(),
                        a.stageRight()))
            .toList());
  }

  private static MovedView moved(Effect.Moved moved) {
    String text =
        switch (moved.direction()) {
          case LOST -> "no longer right";
          case WORSE -> "less sure";
          case BETTER -> "surer";
          case WON -> "now right";
        };
    boolean good =
        moved.direction() == Effect.Direction.BETTER || moved.direction() == Effect.Direction.WON;
    return new MovedView(
        moved.boot(),
        moved.label(),
        good ? "better" : "worse",
        text,
        moved.before(),
        moved.after(),
        moved.before().equals(moved.after()),
        Percent.of(moved.rightBefore()),
        Percent.of(moved.rightAfter()));
  }
}
