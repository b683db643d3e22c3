package standstill.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Span;
import standstill.base.Trail;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * An entry whose wording ended says so: when no program of today prints any of its lines, its text
 * names the last version that did, so that nobody looks for it in a newer log.
 */
final class EndedWordings implements Rule {
  @Override
  public String id() {
    return "ended-wordings";
  }

  @Override
  public String title() {
    return "An entry whose wording ended says so";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : base.faults()) {
      List<Span> spans =
          fault.signs().stream()
              .filter(s -> s.form() instanceof SignForm.OnLine)
              .map(Sign::span)
              .toList();
      problem(spans, fault.about(), "about", fault.where()).ifPresent(problems::add);
    }
    for (Trail trail : base.trails()) {
      List<Span> spans = trail.signs().stream().map(Trail.TrailSign::span).toList();
      problem(spans, trail.why() + " " + trail.mattersWhen(), "why", trail.where())
          .ifPresent(problems::add);
    }
    return problems;
  }

  private static Optional<Problem> problem(
      List<Span> spans, String text, String key, Position where) {
    boolean ended = !spans.isEmpty() && spans.stream().allMatch(s -> s.until().isPresent());
    boolean said =
        spans.stream().flatMap(s -> s.until().stream()).anyMatch(r -> text.contains(r.version()));
    return ended && !said
        ? Optional.of(
            Problem.error(
                where,
                "none of its wordings is printed any more, and its text does not say so",
                "name the last version that prints it in '" + key + "'"))
        : Optional.empty();
  }
}
