package standstill.web;

import java.util.List;
import standstill.base.Stage;
import standstill.guide.Sight;

/**
 * What is seen on the screen, as choices.
 *
 * @param choices in the order of a boot
 */
public record SightsView(List<Choice> choices) {
  /** A choice; {@code stage} is empty where none is told. */
  public record Choice(String stage, String text) {}

  static SightsView of() {
    return new SightsView(
        Sight.all().stream()
            .map(s -> new Choice(s.stage().map(Stage::word).orElse(""), s.text()))
            .toList());
  }
}
