package standstill.web;

import java.util.List;
import standstill.base.Base;
import standstill.base.Fix;
import standstill.base.Stage;
import standstill.guide.Before;
import standstill.guide.Course;
import standstill.guide.Guide;
import standstill.guide.Offers;
import standstill.guide.Sight;

/**
 * What else is seen, and what was tried, before a walk without a log.
 *
 * @param stage word of the stage that was chosen; empty for none
 * @param symptoms that belong to the stage first of all; all of them when no stage was chosen
 * @param others that are seen in the stage too
 * @param fixes that may have been tried
 * @param needs things that may be lacking
 * @param authored walks written by hand that fit
 */
public record SymptomsView(
    String stage,
    List<Symptom> symptoms,
    List<Symptom> others,
    List<Choice> fixes,
    List<Choice> needs,
    List<Offer> authored) {
  private static final int MOST_FIXES = 10;

  /** A symptom. */
  public record Symptom(String id, String title, String look) {}

  /** Something to tick. */
  public record Choice(String id, String title, boolean chosen) {}

  /** A walk written by hand. */
  public record Offer(String id, String title) {}

  static SymptomsView of(Base base, Guide guide, Course course) {
    return new SymptomsView(
        course.stage().map(Stage::word).orElse(""),
        symptoms(base, course, true),
        symptoms(base, course, false),
        fixes(
            guide.guide(guide.withoutLog(), course.observations(), course.limits(false)).ranking(),
            base,
            course),
        needs(base, course),
        course.stage().isEmpty()
            ? List.of()
            : Offers.of(
                    base,
                    course.stage(),
                    Sight.symptoms(base, course.stage()).stream()
                        .filter(s -> s.stages().get(0) == course.stage().get())
                        .map(s -> s.id())
                        .collect(java.util.stream.Collectors.toSet()),
                    java.util.Optional.empty())
                .stream()
                .map(w -> new Offer(w.id(), w.title()))
                .toList());
  }

  private static List<Symptom> symptoms(Base base, Course course, boolean first) {
    return Sight.symptoms(base, course.stage()).stream()
        .filter(
            s -> first == (course.stage().isEmpty() || s.stages().get(0) == course.stage().get()))
        .map(s -> new Symptom(s.id(), s.title(), s.look()))
        .toList();
  }

  static List<Choice> fixes(standstill.rank.Ranking ranking, Base base, Course course) {
    List<Choice> choices = new java.util.ArrayList<>();
    for (String id : course.before()) {
      base.fix(id).ifPresent(f -> choices.add(new Choice(id, f.title(), true)));
    }
    for (Fix fix : Before.fixes(ranking, MOST_FIXES)) {
      if (!course.before().contains(fix.id())) {
        choices.add(new Choice(fix.id(), fix.title(), false));
      }
    }
    return choices;
  }

  static List<Choice> needs(Base base, Course course) {
    return base.scale().needs().entrySet().stream()
        .map(e -> new Choice(e.getKey(), e.getValue(), course.lacks().contains(e.getKey())))
        .toList();
  }
}
