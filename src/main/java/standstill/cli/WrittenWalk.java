package standstill.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Walk;
import standstill.guide.Course;

/** A walk written by hand on a terminal; where it ends in a cause, the guide goes on from there. */
final class WrittenWalk {
  private final Base base;
  private final Dialogue dialogue;

  WrittenWalk(Base base, Dialogue dialogue) {
    this.base = base;
    this.dialogue = dialogue;
  }

  /** Goes through it; gives the course with its end. */
  Course walk(Walk walk, Course course) throws IOException {
    dialogue.say("", walk.title());
    dialogue.say("", walk.about());
    List<Walk.Step> path = new ArrayList<>(List.of(walk.steps().get(0)));
    while (true) {
      Walk.Step step = path.get(path.size() - 1);
      dialogue.line("");
      dialogue.head(step.ask(), step.minutes(), step.risk(), List.of());
      dialogue.cautions(step.cautions());
      dialogue.numbered(step.how());
      List<String> choices =
          new ArrayList<>(step.answers().stream().map(Walk.Answer::text).toList());
      dialogue.options(choices);
      String input = dialogue.read("Number, or b back, s skip this walk, q quit: ", course);
      int n = Dialogue.toNumber(input, choices.size());
      if (input.equals("s")) {
        return course.reply(new Course.Turn(Course.Kind.WALK, walk.id(), Course.SKIP));
      } else if (input.equals("b") && path.size() > 1) {
        path.remove(path.size() - 1);
      } else if (input.equals("b") && !course.turns().isEmpty()) {
        return course.back();
      } else if (n == 0) {
        dialogue.line("A number from 1 to " + choices.size() + ", or one of the letters.");
      } else {
        Walk.Answer answer = step.answers().get(n - 1);
        Optional<Walk.Step> next =
            answer.leads() == Walk.Leads.STEP ? walk.step(answer.to()) : Optional.empty();
        if (next.isEmpty()) {
          return end(walk, answer, course);
        }
        path.add(next.get());
      }
    }
  }

  private Course end(Walk walk, Walk.Answer answer, Course course) {
    Optional<Fault> fault =
        switch (answer.leads()) {
          case FAULT -> base.fault(answer.to());
          case FIX -> base.faultOfFix(answer.to());
          default -> Optional.empty();
        };
    dialogue.line("");
    dialogue.say("", fault.map(f -> "That points to: " + f.title() + ".").orElse(answer.to()));
    return course.reply(
        new Course.Turn(Course.Kind.WALK, walk.id(), fault.map(Fault::id).orElse(Course.NO_CAUSE)));
  }
}
