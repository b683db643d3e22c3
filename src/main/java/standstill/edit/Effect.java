package standstill.edit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Stage;
import standstill.score.Result;
import standstill.score.Score;

/**
 * What a change does to the diagnosis of the labelled boots, cross-validated before and after.
 *
 * @param boots how many were measured
 * @param rightBefore how many had the right answer first, before
 * @param rightAfter how many have it afterwards
 * @param moved those whose answer or certainty changed, the worst first
 * @param added those that were not there before
 */
public record Effect(
    int boots, long rightBefore, long rightAfter, List<Moved> moved, List<Added> added) {
  /** Smaller changes of a probability are not worth a line. */
  private static final double LEAST = 0.005;

  public Effect {
    moved = List.copyOf(moved);
    added = List.copyOf(added);
  }

  /**
   * A boot that the change brings, measured with rates to which it and its like gave nothing.
   *
   * @param boot its name
   * @param label what is known of it
   * @param said what is said first of it
   * @param right whether that is right
   * @param chance probability of all right answers together
   * @param stage the stage that was found
   * @param stageRight whether that is the labelled one
   */
  public record Added(
      String boot,
      String label,
      String said,
      boolean right,
      double chance,
      Stage stage,
      boolean stageRight) {}

  /**
   * A boot that comes out otherwise.
   *
   * @param boot its name
   * @param label what is known of it
   * @param direction better or worse
   * @param before what was said first
   * @param after what is said first now
   * @param rightBefore probability of all right answers together, before
   * @param rightAfter the same, afterwards
   */
  public record Moved(
      String boot,
      String label,
      Direction direction,
      String before,
      String after,
      double rightBefore,
      double rightAfter) {}

  /** Which way a boot moved. */
  public enum Direction {
    /** The right answer was first and is no longer. */
    LOST,
    /** The right answer became less probable. */
    WORSE,
    /** The right answer became more probable. */
    BETTER,
    /** The right answer was not first and is now. */
    WON
  }

  /** How many boots moved in a direction. */
  public long count(Direction direction) {
    return moved.stream().filter(m -> m.direction() == direction).count();
  }

  /** The result in a sentence. */
  public String summary() {
    return "Measured on %d labelled boots: right first %d before, %d after; %d won, %d lost, %d surer, %d less sure."
            .formatted(
                boots,
                rightBefore,
                rightAfter,
                count(Direction.WON),
                count(Direction.LOST),
                count(Direction.BETTER),
                count(Direction.WORSE))
        + added.stream()
            .map(
                a ->
                    "\nThe new boot %s (%s) comes out as: %s; %s."
                        .formatted(
                            a.boot(), a.label(), a.said(), a.right() ? "right" : "not right"))
            .collect(Collectors.joining());
  }

  /** Compares two measurements; the second may have boots that the first lacks. */
  static Effect between(Base baseBefore, Score before, Base baseAfter, Score after) {
    Map<String, Result> old = new HashMap<>();
    before.results().forEach(r -> old.put(r.label().name(), r));
    List<Moved> moved = new ArrayList<>();
    List<Added> added = new ArrayList<>();
    for (Result now : after.results()) {
      Result then = old.get(now.label().name());
      if (then == null) {
        added.add(
            new Added(
                now.label().name(),
                now.label().label(),
                said(now, baseAfter),
                now.right(),
                now.probabilityOfRight(),
                now.stage(),
                now.stageRight()));
        continue;
      }
      double change = now.probabilityOfRight() - then.probabilityOfRight();
      if (now.right() == then.right() && Math.abs(change) < LEAST) {
        continue;
      }
      Direction direction =
          now.right() != then.right()
              ? (now.right() ? Direction.WON : Direction.LOST)
              : (change > 0 ? Direction.BETTER : Direction.WORSE);
      moved.add(
          new Moved(
              now.label().name(),
              now.label().label(),
              direction,
              said(then, baseBefore),
              said(now, baseAfter),
              then.probabilityOfRight(),
              now.probabilityOfRight()));
    }
    moved.sort(
        Comparator.comparing(Moved::direction)
            .thenComparing(m -> -Math.abs(m.rightAfter() - m.rightBefore()))
            .thenComparing(Moved::boot));
    return new Effect(
        after.results().size(),
        before.results().stream().filter(Result::right).count(),
        after.results().stream().filter(Result::right).count(),
        moved,
        added);
  }

  private static String said(Result result, Base base) {
    return switch (result.verdict()) {
      case "stalled" ->
          result.top().isEmpty()
              ? "a stall without a cause"
              : base.fault(result.top().get(0)).map(Fault::title).orElse(result.top().get(0));
      case "no-stall" -> "no stall";
      case "unlisted" -> "a cause that is not in the base";
      default -> "not a boot log";
    };
  }
}
