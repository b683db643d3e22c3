package standstill.web;

import java.util.List;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.guide.Sight;

/**
 * What is seen on the screen, as choices.
 *
 * @param choices in the order of a boot
 */
public record SightsView(List<Choice> choices) {
  /** A choice and where it leads; {@code stage} is empty where none is told. */
  public record Choice(String stage, String text, String href) {}

  static SightsView of(Base base) {
    return new SightsView(
        Sight.all().stream()
            .map(
                s -> {
                  String stage = s.stage().map(Stage::word).orElse("");
                  String seen =
                      s.symptoms(base).stream()
                          .map(id -> "&sees=" + id + "&begun=yes")
                          .collect(Collectors.joining());
                  return new Choice(stage, s.text(), "/walk?stage=" + stage + seen);
                })
            .toList());
  }
}
