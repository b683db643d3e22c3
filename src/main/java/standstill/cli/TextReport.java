package standstill.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Stage;
import standstill.log.LogLine;
import standstill.match.Seen;
import standstill.match.SeenTrail;
import standstill.rank.Cause;
import standstill.rank.Factor;
import standstill.rank.Ranking;
import standstill.rank.StopBelief;
import standstill.report.Evidence;
import standstill.report.Percent;
import standstill.report.Report;
import standstill.trace.Gap;
import standstill.trace.Loop;
import standstill.trace.Trace;

/** A report for a terminal, 80 columns wide. */
final class TextReport {
  private static final int MOST_PROOF_LINES = 4;

  /** A stop that is less likely than that is only a guess. */
  private static final double LIKELY = 0.5;

  private static final int MOST_TRAILS = 4;

  private final Style style;
  private final StringBuilder out = new StringBuilder();

  TextReport(Style style) {
    this.style = style;
  }

  /** The whole report. */
  String write(Report report, int top) {
    if (report.diagnosis().isEmpty()) {
      paragraph("", style.bold(report.heading()) + ": " + report.reason() + ".");
      if (report.verdict().equals(Report.NOT_DIAGNOSED)) {
        return out.toString();
      }
      line("");
      paragraph(
          "",
          "Paste what the screen showed while the machine started, from the first line that you have. If you"
              + " have a photo only, type its last ten lines.");
      return out.toString();
    }
    Report.Diagnosis diagnosis = report.diagnosis().get();
    head(report, diagnosis);
    stages(diagnosis.trace());
    List<Cause> causes =
        diagnosis.ranking().listed().stream().filter(Cause::hasProof).limit(top).toList();
    verdict(report.verdict(), diagnosis, causes);
    int number = 1;
    for (Cause cause : causes) {
      cause(
          number, cause, diagnosis.given(cause), number == 1 && report.verdict().equals("stalled"));
      number++;
    }
    rest(report.verdict(), diagnosis);
    unexplained(diagnosis.unexplained());
    trails(diagnosis.trails());
    return out.toString();
  }

  private void head(Report report, Report.Diagnosis diagnosis) {
    int boots = report.log().boots().size();
    String which = boots > 1 ? ", boot " + diagnosis.boot().number() + " of " + boots : "";
    line(
        style.faint(
            report.log().lineCount() + " lines" + which + ", family " + report.log().family()));
    if (!diagnosis.whyBoot().isEmpty()) {
      paragraph("", style.faint("This boot was taken since " + diagnosis.whyBoot() + "."));
    }
    report.log().limits().forEach(limit -> paragraph("", limit));
    line("");
  }

  /** The stages on one line, the one where progress ended in brackets, and a mark below it. */
  private void stages(Trace trace) {
    StringBuilder row = new StringBuilder();
    int mark = 0;
    String seen = style.unicode() ? " ─ " : " - ";
    String ahead = style.unicode() ? " ┄ " : " . ";
    for (Stage stage : Stage.values()) {
      if (row.length() > 0) {
        row.append(trace.known() && !stage.isAfter(trace.stage()) ? seen : ahead);
      }
      if (trace.known() && stage == trace.stage()) {
        mark = row.length() + stage.word().length() / 2 + 1;
        row.append('[').append(stage.word()).append(']');
      } else {
        row.append(stage.word());
      }
    }
    line("  " + row);
    if (trace.known()) {
      String end = trace.stage() == Stage.DONE ? "the boot came through" : "progress ended here";
      String arrow = style.unicode() ? "↑" : "^";
      String note = arrow + " " + end + ", line " + trace.lastLine();
      int at = Math.min(mark, Paragraph.WIDTH - 2 - note.length());
      line("  " + " ".repeat(at) + style.bold(note));
    } else {
      line("  the paste does not tell which stage the boot reached");
    }
    for (Gap gap : trace.gaps()) {
      if (gap.seconds() >= 20) {
        line(
            String.format(
                Locale.ROOT, "  silent for %.0f s before line %d", gap.seconds(), gap.line()));
      }
    }
    for (Loop loop : trace.loops()) {
      if (loop.times() >= 8) {
        line(
            Paragraph.oneLine(
                "  "
                    + loop.times()
                    + " times, last on line "
                    + loop.lastLine()
                    + ": "
                    + loop.text(),
                Paragraph.WIDTH));
      }
    }
    line("");
  }

  /** What the boot ended in, with the lines that show it, and then why. */
  private void verdict(String verdict, Report.Diagnosis diagnosis, List<Cause> causes) {
    Ranking ranking = diagnosis.ranking();
    if (verdict.equals("no-stall")) {
      paragraph(
          "",
          style.bold("Nothing stopped")
              + " ("
              + Percent.of(ranking.noStall())
              + "), as far as this text shows."
              + (causes.isEmpty() ? "" : " If your machine did stop, these come nearest:"));
      line("");
      return;
    }
    ranking.stop().ifPresent(this::stop);
    if (verdict.equals("unlisted")) {
      paragraph(
          "",
          style.bold("Why: not in the base, or the text does not show it")
              + " ("
              + Percent.of(ranking.notListed())
              + ")."
              + (causes.isEmpty() ? "" : " These come nearest:"));
      if (causes.isEmpty()) {
        paragraph(
            "",
            "More text tells more: boot once more without 'quiet', and copy or photograph the last screen.");
      }
    } else {
      paragraph("", style.bold("Why") + ", most likely first:");
    }
    line("");
  }

  private void stop(StopBelief belief) {
    boolean sure = belief.probability() >= LIKELY;
    paragraph(
        "",
        style.bold((sure ? "" : "Perhaps: ") + belief.stop().title())
            + " ("
            + Percent.of(belief.probability())
            + ").");
    TreeMap<Integer, String> lines = new TreeMap<>();
    for (Factor factor : belief.factors()) {
      for (Seen seen : factor.signs()) {
        seen.hits().forEach(hit -> lines.put(hit.line(), hit.text()));
      }
    }
    lines.descendingMap().entrySet().stream()
        .limit(MOST_PROOF_LINES)
        .sorted(Map.Entry.comparingByKey())
        .forEach(each -> proof(each.getKey(), each.getValue()));
    line("");
  }

  /** What is left for causes that are not listed, and the look that would settle most. */
  private void rest(String verdict, Report.Diagnosis diagnosis) {
    if (verdict.equals("stalled")) {
      paragraph(
          "",
          "Another cause, which the base does not list: "
              + Percent.of(diagnosis.ranking().notListed())
              + ".");
      line("");
    }
    diagnosis
        .look()
        .ifPresent(
            look -> {
              paragraph(
                  "",
                  style.bold("What would settle it")
                      + " ("
                      + look.check().minutes()
                      + " min): "
                      + look.check().title());
              look.check().how().forEach(how -> paragraph("   ", how));
              line("");
            });
  }

  private void cause(int number, Cause cause, Given given, boolean withFix) {
    String title = number + ". " + cause.fault().title();
    String chance = Percent.of(cause.probability());
    List<String> lines = new ArrayList<>(Paragraph.lines("", "   ", title));
    String last = lines.get(lines.size() - 1);
    if (last.length() + 2 + chance.length() > Paragraph.WIDTH) {
      lines.add(" ".repeat(Paragraph.WIDTH - chance.length()) + chance);
    } else {
      lines.set(
          lines.size() - 1,
          last + " ".repeat(Paragraph.WIDTH - last.length() - chance.length()) + chance);
    }
    lines.forEach(l -> line(style.bold(l)));
    line("   " + style.faint(cause.fault().id()));
    for (Evidence evidence : Evidence.reasonsFor(cause)) {
      paragraph("   + ", evidence.says());
      for (int i = 0; i < Math.min(MOST_PROOF_LINES, evidence.lines().size()); i++) {
        proof(evidence.lines().get(i), evidence.text().get(i));
      }
      if (evidence.lines().size() > MOST_PROOF_LINES) {
        line("        and " + (evidence.lines().size() - MOST_PROOF_LINES) + " more");
      }
    }
    for (Evidence evidence : Evidence.reasonsAgainst(cause).stream().limit(2).toList()) {
      paragraph("   - ", evidence.says());
    }
    if (withFix && !cause.fault().fixes().isEmpty()) {
      fix(cause.fault().fixes().get(0), given);
    }
    line("");
  }

  private void proof(int number, String text) {
    line(
        Paragraph.oneLine(
            String.format(Locale.ROOT, "   %5d: %s", number, text.strip()), Paragraph.WIDTH));
  }

  private void fix(Fix fix, Given given) {
    line("");
    paragraph("   First repair: ", "   ", fix.title() + " (" + PlanText.tags(fix) + ")");
    for (String caution : fix.cautions()) {
      paragraph("   ! ", style.warn(caution));
    }
    PlanText.write(
        fix,
        given,
        ") ",
        (before, text) -> paragraph("   " + before, before.equals("! ") ? style.warn(text) : text));
    paragraph("   It worked if: ", "   ", fix.prove());
    paragraph("   To undo: ", "   ", fix.undo());
  }

  private void unexplained(List<LogLine> lines) {
    if (lines.isEmpty()) {
      return;
    }
    line("Near the stop, and explained by nothing in the base:");
    lines.stream().skip(Math.max(0, lines.size() - 8)).forEach(l -> proof(l.number(), l.text()));
    line("");
  }

  private void trails(List<SeenTrail> trails) {
    if (trails.isEmpty()) {
      return;
    }
    line("Looks bad, is harmless:");
    for (SeenTrail trail : trails.stream().limit(MOST_TRAILS).toList()) {
      String where = trail.hits().isEmpty() ? "" : " (line " + trail.hits().get(0).line() + ")";
      paragraph("   ", trail.trail().title() + where);
    }
    if (trails.size() > MOST_TRAILS) {
      line("   and " + (trails.size() - MOST_TRAILS) + " more of the kind");
    }
    line("");
  }

  private void paragraph(String first, String text) {
    Paragraph.lines(first, text).forEach(this::line);
  }

  private void paragraph(String first, String others, String text) {
    Paragraph.lines(first, others, text).forEach(this::line);
  }

  private void line(String text) {
    out.append(text.stripTrailing()).append('\n');
  }
}
