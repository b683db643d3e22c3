package standstill.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import standstill.base.Base;
import standstill.base.Circumstance;
import standstill.base.Example;
import standstill.base.FactLine;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.LineForm;
import standstill.base.Marks;
import standstill.base.Milestone;
import standstill.base.NameRule;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Trail;
import standstill.text.Pattern;
import standstill.text.Position;
import standstill.text.Problem;

/** Every pattern matches the texts that it is said to match, and none of its near misses. */
final class SignTexts implements Rule {
  @Override
  public String id() {
    return "sign-texts";
  }

  @Override
  public String title() {
    return "Every pattern matches its texts and none of its near misses";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine onLine) {
          test(problems, sign.where(), onLine.line(), sign.seen(), sign.unlike());
        }
      }
    }
    for (Trail trail : base.trails()) {
      for (Trail.TrailSign sign : trail.signs()) {
        test(problems, sign.where(), sign.line(), sign.seen(), sign.unlike());
      }
      for (Trail.Proviso proviso : trail.only()) {
        if (proviso.form() instanceof SignForm.OnLine onLine) {
          test(problems, proviso.where(), onLine.line(), proviso.seen(), proviso.unlike());
        }
      }
    }
    for (Circumstance circumstance : base.circumstances()) {
      for (Circumstance.Case each : circumstance.cases()) {
        for (Example tell : each.tells()) {
          test(problems, circumstance.where(), tell.line(), tell.seen(), List.of());
        }
      }
    }
    // What a family includes is tested where it is written, which is in the smallest that has it.
    Set<Object> tested = new HashSet<>();
    for (Family family :
        base.families().stream()
            .sorted(Comparator.comparingInt((Family f) -> f.include().size()))
            .toList()) {
      Position where = Position.ofFile("families/" + family.id() + ".yaml");
      for (Milestone milestone : family.milestones()) {
        if (tested.add(milestone)) {
          test(problems, where, milestone.line(), milestone.seen(), List.of());
        }
      }
      for (List<Example> examples :
          List.of(family.recognise(), family.mayBe(), family.begins(), family.kernelBegins())) {
        for (Example example : examples) {
          if (tested.add(example)) {
            test(problems, where, example.line(), example.seen(), List.of());
          }
        }
      }
      for (FactLine fact : family.facts().lines()) {
        test(problems, where, fact.line(), fact.seen(), List.of());
        for (String text : fact.seen()) {
          if (!fact.fits(text)) {
            problems.add(
                Problem.error(
                    where,
                    "fact line '" + fact.id() + "' does not take its text: " + text,
                    "the text lacks what must stand beside, or has what must not"));
          }
        }
      }
      for (NameRule rule : family.facts().names()) {
        test(problems, where, rule.line(), rule.seen(), List.of());
      }
      Marks marks = family.marks();
      Stream.of(marks.stamps(), marks.waiting(), marks.separators(), marks.headings())
          .flatMap(List::stream)
          .forEach(mark -> test(problems, where, mark.line(), mark.seen(), List.of()));
      for (LineForm form : family.lineForms()) {
        boolean fresh = tested.add(form);
        for (String seen : form.seen()) {
          if (fresh && form.prefix().findAtStart(seen).isEmpty()) {
            problems.add(
                Problem.error(
                    where, "line form '" + form.id() + "' does not match its text: " + seen, ""));
          }
        }
      }
    }
    return problems;
  }

  private static void test(
      List<Problem> problems,
      Position where,
      Pattern pattern,
      List<String> seen,
      List<String> unlike) {
    for (String text : seen) {
      if (!pattern.foundIn(text)) {
        problems.add(
            Problem.error(
                where, "pattern does not match its seen text: " + text, "pattern: " + pattern));
      } else if (!prefilterAgrees(pattern, text)) {
        problems.add(
            Problem.error(
                where,
                "literals of the pattern are not in its seen text: " + text,
                "report this as a fault of the program; literals: " + pattern.literals()));
      }
    }
    for (String text : unlike) {
      if (pattern.foundIn(text)) {
        problems.add(
            Problem.error(
                where, "pattern matches its unlike text: " + text, "pattern: " + pattern));
      }
    }
  }

  private static boolean prefilterAgrees(Pattern pattern, String text) {
    return pattern.literals().isEmpty() || pattern.literals().stream().anyMatch(text::contains);
  }
}
