package standstill.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Stage;
import standstill.guide.Course;
import standstill.guide.Guidance;
import standstill.guide.Guide;
import standstill.guide.Offers;
import standstill.guide.Step;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;
import standstill.report.Percent;
import standstill.report.WalkSummary;

/**
 * A step of a walk, ready for its template.
 *
 * @param kind {@code check}, {@code fix}, {@code log}, {@code written}, {@code over} or {@code
 *     cured}
 * @param hold whether the boot came through for once, and what is left is to make it hold
 * @param left what was neither tried nor ruled out, to choose from
 * @param number of the step, from 1
 * @param causes the live ranking
 * @param changed whether the last reply moved something, so that changes are shown
 * @param turns what was replied so far
 * @param system what may be said of the system, where the step depends on it
 * @param hidden the walk as hidden fields of a form, without what the form itself sets
 */
public record WalkView(
    String kind,
    boolean hold,
    List<LeftView> left,
    int number,
    String address,
    TrackView track,
    String stage,
    StepView step,
    List<CauseView> causes,
    boolean changed,
    List<TurnView> turns,
    List<String> contradictions,
    List<String> seen,
    List<SymptomsView.Choice> fixes,
    List<SymptomsView.Choice> needs,
    List<WalkAddress.Pair> hidden,
    Optional<SystemView> system,
    String path,
    String back,
    String again,
    String tree,
    String summary,
    List<SymptomsView.Offer> authored) {
  private static final int MOST_CAUSES = 6;
  private static final double LEAST = 0.005;

  /** A cause that fell by so much is shown although it is out of the list. */
  private static final double FALL = 0.02;

  private static final int MOST_FALLEN = 4;

  /** What to do, and the replies to it. */
  public record StepView(
      String title,
      String against,
      int minutes,
      String risk,
      List<String> needs,
      List<String> cautions,
      List<String> how,
      Optional<PlanView> plan,
      String prove,
      String undo,
      List<ReplyView> replies,
      String skip,
      String why,
      List<String> figures) {}

  /** A repair that is left, its risk, why it is not proposed, and the address that tries it. */
  public record LeftView(
      String title,
      String against,
      int minutes,
      String risk,
      boolean grave,
      String percent,
      String why,
      String href) {}

  /** A reply and where it leads. */
  public record ReplyView(String text, String href) {}

  /** A cause in the live ranking; {@code change} in points, empty when nothing moved. */
  public record CauseView(String title, String percent, int width, String change) {}

  /** A reply that was given, and the address without it. */
  public record TurnView(String question, String reply, String takeBack) {}

  /** The hidden fields of a form that asks for the system itself. */
  public List<WalkAddress.Pair> hiddenButSystem() {
    return hidden.stream().filter(p -> !p.name().equals(SystemView.KEY)).toList();
  }

  static WalkView of(Base base, Guide guide, WalkPlace place, Course course) {
    Guidance guidance = place.guidance(guide, course);
    @Nullable Ranking before =
        course.turns().isEmpty() ? null : place.guidance(guide, course.back()).ranking();
    Optional<String> cured = course.cured(base);
    String kind = cured.isPresent() ? "cured" : kind(guidance.step());
    Course fresh =
        new Course(course.stage(), course.sees(), course.lacks(), course.before(), List.of());
    return new WalkView(
        kind,
        cured.isEmpty() && !course.temporary(base).isEmpty(),
        cured.isEmpty() && guidance.step() instanceof Step.HandOver over
            ? over.left().stream().map(l -> left(place, course, l)).toList()
            : List.of(),
        course.turns().size() + 1,
        place.address(),
        place
            .report()
            .flatMap(r -> r.diagnosis())
            .map(d -> TrackView.of(d.trace()))
            .orElseGet(TrackView::none),
        course.stage().map(Stage::word).orElse(""),
        cured.isPresent() ? cured(base, cured.get()) : step(base, place, course, guidance.step()),
        causes(guidance.ranking(), before),
        before != null,
        course.turns().stream().map(t -> turn(base, place, course, t)).toList(),
        guidance.contradictions().stream().map(c -> WalkSummary.contradiction(base, c)).toList(),
        course.sees().stream().map(id -> base.symptom(id).map(s -> s.title()).orElse(id)).toList(),
        SymptomsView.fixes(guidance.ranking(), base, course),
        SymptomsView.needs(base, course),
        Stream.concat(
                WalkAddress.pairs(course, place.boot()).stream(),
                place.said().stream().map(w -> new WalkAddress.Pair(SystemView.KEY, w)))
            .filter(p -> !p.name().equals("before") && !p.name().equals("lacks"))
            .toList(),
        system(base, place, course, guidance.step()),
        place.path(),
        course.turns().isEmpty() ? "" : place.to(course.back()),
        place.to(fresh),
        place.to("tree", course),
        place.to("summary", course),
        Offers.of(
                base,
                Optional.empty(),
                course.sees(),
                course.turns().isEmpty() ? Optional.of(guidance.ranking()) : Optional.empty())
            .stream()
            .map(w -> new SymptomsView.Offer(w.id(), w.title()))
            .toList());
  }

  private static LeftView left(WalkPlace place, Course course, Step.Left left) {
    return new LeftView(
        left.fix().title(),
        left.fault().title(),
        left.fix().minutes(),
        left.fix().risk().title(),
        left.fix().isGrave(),
        Percent.of(left.chance()),
        left.why(),
        place.to(course.reply(new Course.Turn(Course.Kind.FIX, left.fix().id(), Course.TRY))));
  }

  private static String kind(Step step) {
    if (step instanceof Step.Ask) {
      return "check";
    }
    if (step instanceof Step.Repair) {
      return "fix";
    }
    if (step instanceof Step.Follow) {
      return "written";
    }
    return step instanceof Step.GetLog ? "log" : "over";
  }

  private static Optional<SystemView> system(Base base, WalkPlace place, Course course, Step step) {
    return course.cured(base).isEmpty() && step instanceof Step.Repair repair
        ? Optional.of(
                SystemView.of(
                    base, List.of(repair.fix()), place.said(), place.given(base, repair.fault())))
            .filter(view -> !view.asks().isEmpty())
        : Optional.empty();
  }

  private static StepView cured(Base base, String id) {
    Fault fault = base.faultOfFix(id).orElseThrow();
    return new StepView(
        "Repaired: " + base.fix(id).map(Fix::title).orElse(id),
        fault.title(),
        0,
        "",
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        base.fix(id).map(Fix::prove).orElse(""),
        base.fix(id).map(Fix::undo).orElse(""),
        List.of(),
        "",
        fault.prevent(),
        List.of());
  }

  private static StepView step(Base base, WalkPlace place, Course course, Step step) {
    if (step instanceof Step.Ask ask) {
      Check check = ask.check();
      List<ReplyView> replies = new ArrayList<>();
      for (Check.Answer answer : check.answers()) {
        replies.add(
            reply(place, course, Course.Kind.CHECK, check.id(), answer.id(), answer.text()));
      }
      replies.add(
          reply(
              place, course, Course.Kind.CHECK, check.id(), Observations.UNKNOWN, "I don't know"));
      return new StepView(
          check.title(),
          "",
          check.minutes(),
          check.risk().title(),
          needs(base, check.needs()),
          check.cautions(),
          check.how(),
          Optional.empty(),
          "",
          "",
          replies,
          skip(place, course, Course.Kind.CHECK, check.id()),
          ask.why().words(),
          ask.why().figures());
    }
    if (step instanceof Step.Repair repair) {
      Fix fix = repair.fix();
      return new StepView(
          fix.title(),
          repair.fault().title(),
          fix.minutes(),
          fix.risk().title(),
          needs(base, fix.needs()),
          fix.cautions(),
          List.of(),
          Optional.of(PlanView.of(fix, place.given(base, repair.fault()))),
          fix.prove(),
          fix.undo(),
          List.of(
              reply(
                  place,
                  course,
                  Course.Kind.FIX,
                  fix.id(),
                  Course.HELPED,
                  fix.scope().lasting() ? "It helped" : "It helped, for this boot"),
              reply(place, course, Course.Kind.FIX, fix.id(), Course.NO_HELP, "It did not help")),
          skip(place, course, Course.Kind.FIX, fix.id()),
          repair.why().words(),
          repair.why().figures());
    }
    if (step instanceof Step.GetLog log) {
      return plain(
          "Get the text that the boot prints",
          List.of(
              reply(place, course, Course.Kind.LOG, "log", Course.SKIP, "I can't get one: ask on")),
          log.why().words(),
          log.why().figures());
    }
    if (step instanceof Step.Follow follow) {
      String id = follow.walk().id();
      return plain(
          follow.walk().title(),
          List.of(
              new ReplyView("Go through it", "/walks/" + id),
              reply(
                  place,
                  course,
                  Course.Kind.WALK,
                  id,
                  Course.NO_CAUSE,
                  "I have been through it; it came to no cause")),
          follow.why().words(),
          follow.why().figures());
    }
    return plain(((Step.HandOver) step).reason(), List.of(), "", List.of());
  }

  private static StepView plain(
      String title, List<ReplyView> replies, String why, List<String> figures) {
    return new StepView(
        title,
        "",
        0,
        "",
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        "",
        "",
        replies,
        "",
        why,
        figures);
  }

  private static ReplyView reply(
      WalkPlace place, Course course, Course.Kind kind, String id, String reply, String text) {
    return new ReplyView(text, place.to(course.reply(new Course.Turn(kind, id, reply))));
  }

  private static String skip(WalkPlace place, Course course, Course.Kind kind, String id) {
    return place.to(course.reply(new Course.Turn(kind, id, Course.SKIP)));
  }

  private static List<String> needs(Base base, List<String> ids) {
    return ids.stream().map(n -> base.scale().needs().getOrDefault(n, n)).toList();
  }

  private static TurnView turn(Base base, WalkPlace place, Course course, Course.Turn turn) {
    String back = place.to(course.takeBack(turn.id()));
    return switch (turn.kind()) {
      case CHECK ->
          new TurnView(
              base.check(turn.id()).map(Check::title).orElse(turn.id()),
              WalkSummary.answer(base, turn.id(), turn.reply()),
              back);
      case FIX ->
          new TurnView(
              base.fix(turn.id()).map(Fix::title).orElse(turn.id()),
              WalkSummary.reply(turn.reply()),
              back);
      case WALK ->
          new TurnView(
              base.walk(turn.id()).map(w -> w.title()).orElse(turn.id()),
              WalkSummary.end(base, turn.reply()),
              back);
      case LOG -> new TurnView("Get the text that the boot prints", "not possible", back);
    };
  }

  private static List<CauseView> causes(Ranking now, @Nullable Ranking before) {
    List<CauseView> causes = new ArrayList<>();
    int fallen = 0;
    for (int i = 0; i < now.causes().size(); i++) {
      Cause cause = now.causes().get(i);
      double was = before == null ? cause.probability() : probability(before, cause);
      if (i < MOST_CAUSES && cause.probability() >= LEAST) {
        causes.add(cause(cause.fault().title(), cause.probability(), was));
      } else if (was - cause.probability() >= FALL && fallen < MOST_FALLEN) {
        causes.add(cause(cause.fault().title(), cause.probability(), was));
        fallen++;
      }
    }
    causes.add(
        cause(
            "A cause that the base does not list",
            now.unlisted(),
            before == null ? now.unlisted() : before.unlisted()));
    if (now.noStall() >= LEAST) {
      causes.add(
          cause(
              "Nothing stalled", now.noStall(), before == null ? now.noStall() : before.noStall()));
    }
    return causes;
  }

  private static double probability(Ranking ranking, Cause cause) {
    return ranking.causes().stream()
        .filter(c -> c.fault().id().equals(cause.fault().id()))
        .mapToDouble(Cause::probability)
        .findFirst()
        .orElse(0);
  }

  private static CauseView cause(String title, double now, double was) {
    long points = Math.round((now - was) * 100);
    return new CauseView(
        title,
        Percent.of(now),
        (int) Math.max(1, Math.round(now * 100)),
        points == 0
            ? ""
            : String.format(Locale.ROOT, "%s%d", points > 0 ? "+" : "−", Math.abs(points)));
  }
}
