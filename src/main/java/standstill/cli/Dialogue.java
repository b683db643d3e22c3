package standstill.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Risk;
import standstill.base.Symptom;
import standstill.disguise.Disguise;
import standstill.disguise.LookAt;
import standstill.guide.Before;
import standstill.guide.Course;
import standstill.guide.Guidance;
import standstill.guide.Guide;
import standstill.guide.Known;
import standstill.guide.Limits;
import standstill.guide.Sight;
import standstill.guide.Step;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;
import standstill.report.Percent;
import standstill.report.Report;
import standstill.report.WalkSummary;
import standstill.report.WhatIsKnown;

/** A walk as questions and answers on a terminal, 80 columns wide. */
final class Dialogue {
  private static final int MOST_BEFORE = 9;
  private static final int LONGEST_INPUT = 1_000;

  private final Base base;
  private final Guide guide;
  private final List<String> said;
  private final Optional<Report> report;
  private final BufferedReader in;
  private final PrintWriter out;
  private final Style style;
  private final Ranking start;
  private final boolean log;
  private final Known known;
  private final Disguise disguise;

  Dialogue(
      Base base,
      Optional<Report> report,
      List<String> said,
      BufferedReader in,
      PrintWriter out,
      Style style) {
    this.base = base;
    this.said = said;
    this.guide = new Guide(base);
    this.in = in;
    this.out = out;
    this.style = style;
    this.log = report.flatMap(Report::diagnosis).isPresent();
    this.report = log ? report.map(r -> r.saying(base, said)) : Optional.empty();
    this.disguise = report.map(r -> Disguise.of(r.log())).orElseGet(() -> Disguise.of(List.of()));
    this.known = WhatIsKnown.of(base, this.report, said);
    this.start =
        report
            .flatMap(Report::diagnosis)
            .map(Report.Diagnosis::ranking)
            .orElseGet(() -> guide.withoutLog());
    report
        .filter(r -> r.diagnosis().isEmpty())
        .ifPresent(
            r -> say("", r.heading() + ": " + r.reason() + ". Let us start from what you see."));
  }

  /** The person ended the input. */
  private static final class Ended extends RuntimeException {
    /** Where the walk stood; null before its first step. */
    final transient @Nullable Course course;

    Ended(@Nullable Course course) {
      super("the input ended", null, false, false);
      this.course = course;
    }
  }

  /** Walks until the person ends it or nothing is left; gives the course for saving. */
  Course walk(Course begun, boolean resumed) throws IOException {
    Course course = begun;
    try {
      if (!resumed) {
        course = begin(course);
      }
      course = steps(course);
    } catch (Ended e) {
      line("");
      if (e.course != null) {
        course = e.course;
      }
    }
    note(course);
    return course;
  }

  private Course begin(Course fresh) throws IOException {
    Course course = fresh;
    if (!log) {
      List<String> sights = Sight.all().stream().map(Sight::text).toList();
      line(style.bold("What does the screen show where it stops?"));
      Sight sight = Sight.all().get(number(sights) - 1);
      course = course.at(sight.stage());
      Set<String> seen = new LinkedHashSet<>(sight.symptoms(base));
      List<Symptom> symptoms =
          Sight.symptoms(base, course.stage()).stream()
              .filter(symptom -> !seen.contains(symptom.id()))
              .toList();
      line("");
      line(style.bold("What else do you see?"));
      for (int n : numbers(symptoms.stream().map(Symptom::title).toList())) {
        seen.add(symptoms.get(n - 1).id());
      }
      course = course.seeing(seen);
    }
    Ranking now = guide.guide(start, course.observations(), limits(course)).ranking();
    List<Fix> fixes = Before.fixes(now, MOST_BEFORE);
    if (!fixes.isEmpty()) {
      line("");
      line(style.bold("Have you tried one of these already, and it did not help?"));
      Set<String> tried = new LinkedHashSet<>();
      for (int n : numbers(fixes.stream().map(Fix::title).toList())) {
        tried.add(fixes.get(n - 1).id());
      }
      course = course.triedBefore(tried);
    }
    return course;
  }

  private Limits limits(Course course) {
    return course.limits(log).knowing(known);
  }

  private Course steps(Course begun) throws IOException {
    Course course = begun;
    @Nullable Ranking before = null;
    int count = course.turns().size() + 1;
    Set<String> said = new LinkedHashSet<>();
    while (course.cured(base).isEmpty()) {
      Guidance guidance = guide.guide(start, course.observations(), limits(course));
      for (Guidance.Contradiction contradiction : guidance.contradictions()) {
        if (said.add(contradiction.check() + ' ' + contradiction.answer())) {
          line("");
          say("! ", style.warn(WalkSummary.contradiction(base, contradiction)));
        }
      }
      causes(guidance.ranking(), before);
      before = guidance.ranking();
      if (guidance.step() instanceof Step.HandOver over) {
        line("");
        say("", over.reason());
        line("");
        Optional<Course> chosen = choose(over.left(), course);
        if (chosen.isEmpty()) {
          return course;
        }
        course = chosen.get();
        continue;
      }
      if (course.turns().size() >= Course.MOST_TURNS) {
        say("", "Those were many steps. Somebody more experienced should look at it now.");
        return course;
      }
      line("");
      line(style.faint("Step " + count));
      Course next = step(guidance.step(), course);
      count = next.turns().size() + 1;
      course = next;
    }
    return course;
  }

  /** Lets the person choose among what is left; empty when it is handed over. */
  private Optional<Course> choose(List<Step.Left> left, Course course) throws IOException {
    if (left.isEmpty()) {
      return Optional.empty();
    }
    List<String> choices =
        new ArrayList<>(
            left.stream()
                .map(l -> WalkSummary.left(l) + " - against: " + l.fault().title())
                .toList());
    choices.add("None of these; hand over");
    options(choices);
    while (true) {
      String input = read("Number, or b back, q quit: ", course);
      int n = toNumber(input, choices.size());
      if (n == choices.size()) {
        return Optional.empty();
      } else if (n > 0) {
        return Optional.of(
            course.reply(new Course.Turn(Course.Kind.FIX, left.get(n - 1).fix().id(), Course.TRY)));
      } else if (input.equals("b") && !course.turns().isEmpty()) {
        return Optional.of(course.back());
      }
      line("A number from 1 to " + choices.size() + ", or one of the letters.");
    }
  }

  private Given given(Fault fault) {
    return report
        .flatMap(Report::diagnosis)
        .map(d -> d.given(fault))
        .orElseGet(() -> Given.NOTHING.saying(base, said));
  }

  private Course step(Step step, Course course) throws IOException {
    if (step instanceof Step.Follow follow) {
      return new WrittenWalk(base, this).walk(follow.walk(), course);
    }
    List<String> choices = new ArrayList<>();
    List<Course.Turn> turns = new ArrayList<>();
    String id;
    Course.Kind kind;
    Step.Why why;
    List<String> needs = List.of();
    if (step instanceof Step.Ask ask) {
      Check check = ask.check();
      id = check.id();
      kind = Course.Kind.CHECK;
      why = ask.why();
      needs = check.needs();
      head(check.title(), check.minutes(), check.risk(), needs);
      cautions(check.cautions());
      numbered(check.how());
      for (Check.Answer answer : check.answers()) {
        choices.add(answer.text());
        turns.add(new Course.Turn(kind, id, answer.id()));
      }
      choices.add("I don't know");
      turns.add(new Course.Turn(kind, id, Observations.UNKNOWN));
    } else if (step instanceof Step.Repair repair) {
      Fix fix = repair.fix();
      id = fix.id();
      kind = Course.Kind.FIX;
      why = repair.why();
      needs = fix.needs();
      if (!course.temporary(base).isEmpty()) {
        line(style.bold("You are in; now make it hold"));
      }
      head(fix.title(), fix.minutes(), fix.risk(), needs);
      if (!fix.scope().lasting()) {
        line("Holds for one boot; if it helps, the lasting repair comes next.");
      }
      say("", "Against: " + repair.fault().title());
      cautions(fix.cautions());
      PlanText.write(
          fix,
          given(repair.fault()),
          ". ",
          (before, text) -> say(before, before.equals("! ") ? style.warn(text) : text));
      say("   It worked if: ", fix.prove());
      say("   To undo: ", fix.undo());
      choices.add("It helped");
      choices.add("It did not help");
      turns.add(new Course.Turn(kind, id, Course.HELPED));
      turns.add(new Course.Turn(kind, id, Course.NO_HELP));
    } else {
      id = "log";
      kind = Course.Kind.LOG;
      why = ((Step.GetLog) step).why();
      line("Get the text that the boot prints, and start again with it as FILE.");
      numbered(
          List.of(
              "In the boot menu edit the entry: take 'quiet' and 'splash' off the line that begins with"
                  + " linux, and add ignore_loglevel.",
              "Let it run to the stop. Photograph the last screen and type its last ten lines, or record a"
                  + " serial console (console=ttyS0,115200).",
              "If a later start gets further: journalctl -b -1 > boot.log"));
      choices.add("I can't get one");
      turns.add(new Course.Turn(kind, id, Course.SKIP));
    }
    options(choices);
    while (true) {
      String input = read("Number, or w why, b back, s skip, l lack something, q quit: ", course);
      switch (input) {
        case "w" -> why(why);
        case "s" -> {
          return course.reply(new Course.Turn(kind, id, Course.SKIP));
        }
        case "b" -> {
          if (course.turns().isEmpty()) {
            line("This is the first step.");
          } else {
            return course.back();
          }
        }
        case "l" -> {
          Course lacking = lack(needs, course);
          if (!lacking.equals(course)) {
            return lacking;
          }
        }
        default -> {
          int n = toNumber(input, choices.size());
          if (n > 0) {
            return course.reply(turns.get(n - 1));
          }
          line("A number from 1 to " + choices.size() + ", or one of the letters.");
        }
      }
    }
  }

  private Course lack(List<String> needs, Course course) throws IOException {
    List<Map.Entry<String, String>> things = new ArrayList<>();
    base.scale().needs().entrySet().stream()
        .filter(e -> !course.lacks().contains(e.getKey()))
        .sorted(
            java.util.Comparator.comparing(
                (Map.Entry<String, String> e) -> needs.contains(e.getKey()) ? 0 : 1))
        .forEach(things::add);
    line("What do you lack?");
    Course lacking = course;
    for (int n : numbers(things.stream().map(Map.Entry::getValue).toList())) {
      lacking = lacking.lacking(things.get(n - 1).getKey());
    }
    return lacking;
  }

  void head(String title, int minutes, Risk risk, List<String> needs) {
    say("", style.bold(title));
    StringBuilder facts = new StringBuilder("about " + minutes + " min, " + risk.title());
    if (!needs.isEmpty()) {
      facts.append("; needs ");
      facts.append(
          String.join(
              ", ", needs.stream().map(n -> base.scale().needs().getOrDefault(n, n)).toList()));
    }
    say("", style.faint(facts.toString()));
  }

  void cautions(List<String> cautions) {
    if (!cautions.isEmpty()) {
      line("Before you begin:");
      cautions.forEach(c -> say(" ! ", style.warn(c)));
    }
  }

  void numbered(List<String> steps) {
    for (String step : steps) {
      say("   - ", step);
    }
  }

  void options(List<String> choices) {
    line("");
    for (int i = 0; i < choices.size(); i++) {
      say(String.format(Locale.ROOT, "%3d  ", i + 1), choices.get(i));
    }
  }

  private void why(Step.Why why) {
    say("  ", why.words());
    why.figures().forEach(f -> say("    ", f));
  }

  /** The likeliest causes, and by how much the last answer moved each. */
  private void causes(Ranking now, @Nullable Ranking before) {
    line("");
    line(before == null ? "Likely causes:" : "Likely causes now:");
    for (Cause cause : now.causes().stream().limit(3).toList()) {
      line(cause(cause.probability(), was(before, cause), cause.fault().title()));
    }
    line(
        cause(
            now.unlisted(),
            before == null ? now.unlisted() : before.unlisted(),
            "a cause that the base does not list"));
  }

  private static double was(@Nullable Ranking before, Cause cause) {
    return before == null
        ? cause.probability()
        : before.causes().stream()
            .filter(c -> c.fault().id().equals(cause.fault().id()))
            .mapToDouble(Cause::probability)
            .findFirst()
            .orElse(0);
  }

  private String cause(double now, double was, String title) {
    long points = Math.round((now - was) * 100);
    String change = points == 0 ? "" : String.format(Locale.ROOT, "%+d", points);
    return Paragraph.oneLine(
        String.format(Locale.ROOT, "  %9s %4s  %s", Percent.of(now), change, title),
        Paragraph.WIDTH);
  }

  private void note(Course course) {
    line("");
    Guidance guidance = guide.guide(start, course.observations(), limits(course));
    if (course.cured(base).isPresent()) {
      say("", "Good. Keep this note, in case it comes back:");
      line("");
    }
    String text = new WalkSummary(base, course, guidance, report, disguise::apply).text();
    for (String each : text.lines().toList()) {
      if (each.startsWith("- ")) {
        say("- ", each.substring(2));
      } else {
        line(Paragraph.oneLine(each, Paragraph.WIDTH));
      }
    }
    tellOfTheDisguise(text);
    base.faultOfFix(course.cured(base).orElse(""))
        .filter(f -> !f.prevent().isEmpty())
        .ifPresent(
            f -> {
              line("");
              say("To keep it from coming back: ", "", f.prevent());
            });
    out.flush();
  }

  private void tellOfTheDisguise(String note) {
    if (!disguise.account().isEmpty()) {
      line("");
      say("", "Replaced in the log by stand-ins: " + disguise.account() + ".");
    }
    for (LookAt look : disguise.lookAt(note)) {
      say("Look at this before sharing: ", look.text() + ": " + look.why());
    }
  }

  private int number(List<String> choices) throws IOException {
    options(choices);
    while (true) {
      String input = read("Number, q quit: ", null);
      int n = toNumber(input, choices.size());
      if (n > 0) {
        return n;
      }
      line("A number from 1 to " + choices.size() + ".");
    }
  }

  private Set<Integer> numbers(List<String> choices) throws IOException {
    options(choices);
    while (true) {
      String input = read("Numbers with blanks between, or just Enter for none: ", null);
      Set<Integer> numbers = new LinkedHashSet<>();
      boolean good = true;
      for (String word : input.split("[\\s,;]+")) {
        if (!word.isEmpty()) {
          int n = toNumber(word, choices.size());
          good &= n > 0;
          numbers.add(n);
        }
      }
      if (good) {
        return numbers;
      }
      line("Numbers from 1 to " + choices.size() + ".");
    }
  }

  static int toNumber(String word, int most) {
    try {
      int n = Integer.parseInt(word);
      return n >= 1 && n <= most ? n : 0;
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  String read(String prompt, @Nullable Course course) throws IOException {
    out.print("> " + prompt);
    out.flush();
    String input = in.readLine();
    if (input == null) {
      throw new Ended(course);
    }
    String word = input.strip().toLowerCase(Locale.ROOT);
    if (word.equals("q")) {
      throw new Ended(course);
    }
    return word.length() > LONGEST_INPUT ? word.substring(0, LONGEST_INPUT) : word;
  }

  void say(String first, String text) {
    Paragraph.lines(first, text).forEach(this::line);
    out.flush();
  }

  private void say(String first, String others, String text) {
    Paragraph.lines(first, others, text).forEach(this::line);
  }

  void line(String text) {
    out.println(text.stripTrailing());
  }
}
