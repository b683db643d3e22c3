package standstill.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Walk;
import standstill.guide.Course;

/**
 * A step or an end of a walk written by hand.
 *
 * @param kind {@code step}, {@code fault}, {@code fix} or {@code over}
 * @param heading the question, or what was found
 * @param about what is to be said of it
 * @param fixes repairs at an end, in the order of the base
 * @param turns what was answered so far
 * @param goOn address of the guided walk that knows where this one ended; empty before its end
 */
public record AuthoredWalkView(
    String id,
    String title,
    String kind,
    int number,
    String heading,
    String about,
    int minutes,
    String risk,
    List<String> cautions,
    List<String> how,
    List<WalkView.ReplyView> replies,
    List<ReportView.FixView> fixes,
    List<WalkView.TurnView> turns,
    String goOn,
    List<String> sources) {

  /** The guided walk that goes on from an end: a fault's id, or {@link Course#NO_CAUSE}. */
  private static String goOn(Walk walk, String end) {
    return "/walk?begun=yes"
        + walk.symptoms().stream().limit(1).map(s -> "&sees=" + s).collect(Collectors.joining())
        + "&walk."
        + walk.id()
        + "="
        + end;
  }

  static AuthoredWalkView of(Base base, Walk walk, Map<String, List<String>> given) {
    String self = "/walks/" + walk.id();
    List<WalkView.TurnView> turns = new ArrayList<>();
    StringBuilder query = new StringBuilder();
    Walk.Step step = walk.steps().get(0);
    while (given.containsKey(step.id())) {
      List<String> values = given.getOrDefault(step.id(), List.of());
      Walk.Answer answer = values.size() == 1 ? step.answer(values.get(0)).orElse(null) : null;
      if (answer == null) {
        throw broken();
      }
      turns.add(new WalkView.TurnView(step.ask(), answer.text(), self + query));
      query
          .append(query.length() == 0 ? "?" : "&")
          .append(step.id())
          .append('=')
          .append(answer.id());
      if (answer.leads() != Walk.Leads.STEP) {
        check(given, turns);
        return end(base, walk, answer, turns);
      }
      step = walk.step(answer.to()).orElseThrow(AuthoredWalkView::broken);
    }
    check(given, turns);
    List<WalkView.ReplyView> replies = new ArrayList<>();
    for (Walk.Answer answer : step.answers()) {
      replies.add(
          new WalkView.ReplyView(
              answer.text(),
              self + query + (query.length() == 0 ? "?" : "&") + step.id() + "=" + answer.id()));
    }
    return new AuthoredWalkView(
        walk.id(),
        walk.title(),
        "step",
        turns.size() + 1,
        step.ask(),
        turns.isEmpty() ? walk.about() : "",
        step.minutes(),
        step.risk().title(),
        step.cautions(),
        step.how(),
        replies,
        List.of(),
        turns,
        "",
        sources(walk));
  }

  /** An answer to a step that the walk does not come to is a broken address. */
  private static void check(Map<String, List<String>> given, List<WalkView.TurnView> turns) {
    if (given.size() != turns.size()) {
      throw broken();
    }
  }

  private static NotUnderstood broken() {
    return new NotUnderstood(
        "This address does not fit the walk: it may have been cut off, or the walk has changed since. Start"
            + " it again.");
  }

  private static AuthoredWalkView end(
      Base base, Walk walk, Walk.Answer answer, List<WalkView.TurnView> turns) {
    String heading;
    String about;
    List<ReportView.FixView> fixes = List.of();
    String kind;
    String cause = Course.NO_CAUSE;
    switch (answer.leads()) {
      case FAULT -> {
        Fault fault = base.fault(answer.to()).orElseThrow(AuthoredWalkView::broken);
        kind = "fault";
        cause = fault.id();
        heading = fault.title();
        about = fault.about();
        // Grave repairs come after harmless ones; within each the base's order stays.
        fixes =
            fault.fixes().stream()
                .sorted(java.util.Comparator.comparing((Fix f) -> f.isGrave()))
                .map(fix -> ReportView.fix(base, fix, Given.NOTHING))
                .toList();
      }
      case FIX -> {
        Fix fix = base.fix(answer.to()).orElseThrow(AuthoredWalkView::broken);
        kind = "fix";
        cause = base.faultOfFix(fix.id()).map(Fault::id).orElse(Course.NO_CAUSE);
        heading = fix.title();
        about = base.faultOfFix(answer.to()).map(Fault::about).orElse("");
        fixes = List.of(ReportView.fix(base, fix, Given.NOTHING));
      }
      default -> {
        kind = "over";
        heading = "Here this walk ends";
        about = answer.to();
      }
    }
    return new AuthoredWalkView(
        walk.id(),
        walk.title(),
        kind,
        turns.size() + 1,
        heading,
        about,
        0,
        "",
        List.of(),
        List.of(),
        List.of(),
        fixes,
        turns,
        goOn(walk, cause),
        sources(walk));
  }

  private static List<String> sources(Walk walk) {
    return walk.sources().stream().map(Object::toString).toList();
  }
}
