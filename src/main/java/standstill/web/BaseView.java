package standstill.web;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import standstill.base.Base;
import standstill.store.BaseInUse;
import standstill.store.Edition;
import standstill.text.Problem;

/**
 * The base in use, ready for its template.
 *
 * @param own whether it is the one that the program carries, which never changes
 * @param since when it came into use
 * @param refused when the base on disk was refused; empty when it is in use
 * @param boots how many labelled boots stand beside it
 */
public record BaseView(
    boolean own,
    String since,
    String refused,
    int faults,
    int checks,
    int symptoms,
    int trails,
    int walks,
    int boots,
    List<ProblemView> errors,
    List<ProblemView> warnings) {
  private static final int MOST = 200;
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** A problem; the place is below the base's folder, whose own place is nobody's business. */
  public record ProblemView(String place, String message, String excerpt, String advice) {}

  /**
   * The note on every page while the base on disk is refused.
   *
   * @param errors how many; 0 for no note
   * @param since time of the edition in use
   */
  public record Notice(int errors, String since) {
    /** Nothing to say. */
    static final Notice NONE = new Notice(0, "");

    static Notice of(BaseInUse.State state) {
      return new Notice(
          state.refused().map(r -> r.errors().size()).orElse(0),
          text(state.edition().since(), TIME));
    }
  }

  static BaseView of(BaseInUse.State state, Optional<Path> folder) {
    Edition edition = state.edition();
    Base base = edition.base();
    return new BaseView(
        folder.isEmpty(),
        text(edition.since(), DAY_AND_TIME),
        state.refused().map(r -> text(r.since(), DAY_AND_TIME)).orElse(""),
        base.faults().size(),
        base.checks().size(),
        base.symptoms().size(),
        base.trails().size(),
        base.walks().size(),
        edition.boots().values().stream().mapToInt(List::size).sum(),
        views(state.refused().map(BaseInUse.Refused::errors).orElse(List.of()), folder),
        views(edition.warnings(), folder));
  }

  private static List<ProblemView> views(List<Problem> problems, Optional<Path> folder) {
    String above = folder.map(f -> f + "/").orElse("");
    return problems.stream()
        .limit(MOST)
        .map(
            p -> {
              String place = p.position().toString().replace('\\', '/');
              return new ProblemView(
                  place.startsWith(above) ? place.substring(above.length()) : place,
                  p.message(),
                  p.excerpt(),
                  p.advice());
            })
        .toList();
  }

  private static String text(Instant time, DateTimeFormatter format) {
    return format.format(time.atZone(ZoneId.systemDefault()));
  }
}
