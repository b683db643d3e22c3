package standstill.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Sign;
import standstill.base.Source;
import standstill.base.Stage;
import standstill.base.Symptom;
import standstill.base.Trail;
import standstill.guide.Guide;
import standstill.rank.Cause;
import standstill.report.Percent;

/** Shows one entry of the fault base. */
@Command(
    name = "show",
    mixinStandardHelpOptions = true,
    description = {
      "Shows a cause, a symptom, a check or a false trail.",
      "Former ids of causes work too. 'search' finds ids."
    },
    footerHeading = "%nExample:%n",
    footer = {"  standstill show root-id-on-no-disk"})
final class ShowCommand implements Callable<Integer> {
  @Parameters(paramLabel = "ID", description = "Id of the entry.")
  private String id = "";

  @Mixin private final SystemOption system = new SystemOption();

  @Mixin private final BaseOption base = new BaseOption();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Base used = base.base();
    List<String> lines = new ArrayList<>();
    // Kinds have names of their own; where two share one, both are shown.
    Given given = Given.NOTHING.saying(used, system.words(used));
    used.fault(id).ifPresent(fault -> fault(used, fault, given, lines));
    used.symptom(id).ifPresent(symptom -> symptom(used, symptom, lines));
    used.check(id).ifPresent(check -> check(used, check, lines));
    used.trail(id).ifPresent(trail -> trail(trail, lines));
    if (lines.isEmpty()) {
      throw new Failure(
          ExitCode.USAGE, "no entry '" + id + "'; try: search " + id.replace('-', ' '));
    }
    PrintWriter out = Output.of(spec);
    lines.forEach(out::println);
    out.flush();
    return ExitCode.OK;
  }

  private void fault(Base used, Fault fault, Given given, List<String> lines) {
    title(fault.title(), lines);
    String former = fault.id().equals(id) ? "" : ", formerly " + id;
    text("", (fault.general() ? "general cause " : "cause ") + fault.id() + former, lines);
    text(
        "",
        "belongs to: "
            + fault.stage().word()
            + "; part: "
            + used.scale().parts().getOrDefault(fault.part(), fault.part())
            + "; seen: "
            + fault.howCommon().word().replace('-', ' '),
        lines);
    lines.add("");
    text("", fault.about(), lines);
    head("What is seen", lines);
    for (String symptom : fault.symptoms()) {
      used.symptom(symptom).ifPresent(s -> text("- ", s.title() + " (" + s.id() + ")", lines));
    }
    head("What it leaves in a log", lines);
    for (Sign sign : fault.signs()) {
      String words =
          "; shows " + word(sign.shows().word()) + ", elsewhere " + word(sign.elsewhere().word());
      String span = sign.span().words().isEmpty() ? "" : "; " + sign.span().words();
      text("- ", sign.form().describe() + words + span, lines);
      sign.seen().stream().limit(1).forEach(seen -> text("  as in: ", seen, lines));
    }
    if (!fault.leadsTo().isEmpty()) {
      head("Leads to", lines);
      for (String next : fault.leadsTo()) {
        used.fault(next).ifPresent(f -> text("- ", f.title() + " (" + f.id() + ")", lines));
      }
    }
    head("Told apart by", lines);
    for (Map.Entry<String, ?> entry : fault.toldApartBy().entrySet()) {
      used.check(entry.getKey()).ifPresent(c -> text("- ", c.title() + " (" + c.id() + ")", lines));
    }
    for (Fix fix : fault.fixes()) {
      head("Repair: " + fix.title(), lines);
      text(
          "",
          PlanText.tags(fix) + "; cures it " + word(fix.cures().word()) + needs(used, fix.needs()),
          lines);
      fix.cautions().forEach(caution -> text("! ", caution, lines));
      fix.scope()
          .first()
          .flatMap(used::fix)
          .ifPresent(first -> text("Only after: ", first.title(), lines));
      PlanText.write(fix, given, ". ", (before, text) -> text(before, text, lines));
      text("It worked if: ", fix.prove(), lines);
      text("To undo it: ", fix.undo(), lines);
    }
    if (!fault.prevent().isBlank()) {
      head("To prevent it", lines);
      text("", fault.prevent(), lines);
    }
    sources(fault.sources(), lines);
    text("", "Reviewed on " + fault.reviewed().on() + " by " + fault.reviewed().by() + ".", lines);
  }

  private static void symptom(Base used, Symptom symptom, List<String> lines) {
    title(symptom.title(), lines);
    text(
        "",
        "symptom "
            + symptom.id()
            + "; seen in: "
            + symptom.stages().stream().map(Stage::word).collect(Collectors.joining(", ")),
        lines);
    lines.add("");
    text("", symptom.look(), lines);
    head("Causes, likeliest first", lines);
    for (Cause cause : new Guide(used).causesOf(symptom.id())) {
      Fault fault = cause.fault();
      text(
          "- ",
          fault.title() + " (" + fault.id() + ", " + Percent.of(cause.probability()) + ")",
          lines);
    }
  }

  private static void check(Base used, Check check, List<String> lines) {
    title(check.title(), lines);
    text(
        "",
        "check "
            + check.id()
            + "; "
            + check.minutes()
            + " min; "
            + check.risk().title()
            + needs(used, check.needs()),
        lines);
    lines.add("");
    check.cautions().forEach(caution -> text("! ", caution, lines));
    numbered(check.how(), lines);
    head("Answers", lines);
    check.answers().forEach(answer -> text("- ", answer.text(), lines));
    head("Tells apart", lines);
    used.faults().stream()
        .filter(fault -> fault.toldApartBy().containsKey(check.id()))
        .forEach(fault -> text("- ", fault.title() + " (" + fault.id() + ")", lines));
    sources(check.sources(), lines);
  }

  private static void trail(Trail trail, List<String> lines) {
    title(trail.title(), lines);
    text("", "false trail " + trail.id(), lines);
    head("Lines", lines);
    trail.signs().stream()
        .flatMap(sign -> sign.seen().stream())
        .forEach(seen -> text("- ", seen, lines));
    head("Why it is harmless", lines);
    text("", trail.why(), lines);
    head("When it matters", lines);
    text("", trail.mattersWhen(), lines);
    sources(trail.sources(), lines);
  }

  private static String needs(Base used, List<String> needs) {
    return needs.isEmpty()
        ? ""
        : "; needs: "
            + needs.stream()
                .map(need -> Optional.ofNullable(used.scale().needs().get(need)).orElse(need))
                .collect(Collectors.joining(", "));
  }

  private static void sources(List<Source> sources, List<String> lines) {
    head("Sources", lines);
    sources.forEach(source -> text("- ", source.toString(), lines));
  }

  private static void numbered(List<String> steps, List<String> lines) {
    for (int i = 0; i < steps.size(); i++) {
      text((i + 1) + ". ", steps.get(i), lines);
    }
  }

  private static String word(String word) {
    return word.replace('-', ' ');
  }

  private static void title(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      lines.add("");
    }
    Style style = Style.detect();
    Paragraph.lines("", title).forEach(line -> lines.add(style.bold(line)));
  }

  private static void head(String text, List<String> lines) {
    lines.add("");
    Style style = Style.detect();
    Paragraph.lines("", text).forEach(line -> lines.add(style.bold(line)));
  }

  private static void text(String first, String text, List<String> lines) {
    lines.addAll(Paragraph.lines(first, text));
  }
}
