package standstill.web;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Stage;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * The stages of a boot as a track, for an SVG picture 700 units wide.
 *
 * @param stations one for each stage
 * @param label the picture in words, for those who don't see it
 * @param end horizontal place where progress ended; 0 when it is not known
 */
public record TrackView(List<Station> stations, String label, int end) {
  private static final int FIRST = 50;
  private static final int STEP = 100;

  /**
   * A stage on the track.
   *
   * @param name the stage's word
   * @param x horizontal place
   * @param state {@code passed}, {@code stop}, {@code through} or {@code ahead}
   * @param line number of the first line that proves the stage; 0 when there is none
   */
  public record Station(String name, int x, String state, int line) {}

  static TrackView none() {
    return new TrackView(List.of(), "", 0);
  }

  static TrackView of(Trace trace) {
    List<Station> stations = new ArrayList<>();
    int end = 0;
    for (Stage stage : Stage.values()) {
      int x = FIRST + STEP * stage.ordinal();
      String state = "ahead";
      if (trace.known() && stage == trace.stage()) {
        state = stage == Stage.DONE ? "through" : "stop";
        end = x;
      } else if (trace.known() && trace.stage().isAfter(stage)) {
        state = "passed";
      }
      int line =
          trace.milestones().stream()
              .filter(r -> r.stage() == stage)
              .mapToInt(Reached::line)
              .findFirst()
              .orElse(0);
      stations.add(new Station(stage.word(), x, state, line));
    }
    String label =
        !trace.known()
            ? "The paste does not tell which stage the boot reached."
            : trace.stage() == Stage.DONE
                ? "The boot went through all stages."
                : "Progress ended in the stage "
                    + trace.stage().word()
                    + ", on line "
                    + trace.lastLine()
                    + ".";
    return new TrackView(stations, label, end);
  }
}
