package standstill.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import standstill.base.Fix;
import standstill.base.Risk;
import standstill.decode.Decoder;
import standstill.decode.Meaning;
import standstill.log.LogLine;
import standstill.rank.Cause;
import standstill.report.Evidence;
import standstill.report.LineCode;
import standstill.report.Percent;
import standstill.report.Report;
import standstill.trace.Gap;
import standstill.trace.Loop;

/**
 * What the report page shows, ready for its template.
 *
 * @param verdict the verdict's word
 * @param headline the verdict as a sentence
 * @param reason why it is not a boot log, or empty
 * @param track the stages as a picture
 * @param causes the likeliest causes
 * @param codes the codes in the proof lines and near the stop, explained
 * @param lines the log, or its proof lines
 */
public record ReportView(
    String address,
    String verdict,
    String headline,
    String reason,
    int lineCount,
    int boots,
    int boot,
    TrackView track,
    List<String> notes,
    List<CauseView> causes,
    List<TrailView> trails,
    List<LineView> unexplained,
    List<CodeView> codes,
    List<LineView> lines,
    boolean proofOnly,
    int leftOut) {

  private static final int MOST_CAUSES = 5;
  private static final double LEAST_SHOWN = 0.005;
  private static final int MOST_LINES = 4_000;

  /** A cause on the page. */
  public record CauseView(
      int number,
      String id,
      String title,
      boolean general,
      String stage,
      String percent,
      int width,
      String about,
      List<EvidenceView> reasonsFor,
      List<EvidenceView> reasonsAgainst,
      List<FixView> fixes) {}

  /** A reason on the page, with the lines that prove it. */
  public record EvidenceView(String says, String strength, List<LineView> lines, int more) {}

  /** A fix on the page. */
  public record FixView(
      String title,
      int minutes,
      String risk,
      boolean grave,
      String cures,
      List<String> needs,
      List<String> cautions,
      List<String> steps,
      String prove,
      String undo) {}

  /** A false trail on the page. */
  public record TrailView(String title, String why, String mattersWhen, List<LineView> lines) {}

  /**
   * A line of the log; {@code causes} are the numbers of the causes that it proves.
   *
   * @param parts the text in pieces, of which some are codes with an explanation; empty outside of
   *     the log itself
   */
  public record LineView(int number, String text, List<Integer> causes, List<PartView> parts) {
    LineView(int number, String text, List<Integer> causes) {
      this(number, text, causes, List.of());
    }
  }

  /** A piece of a line; a code when {@code code}, its number in the list of codes, is above 0. */
  public record PartView(String text, String meaning, int code) {}

  /** A code in the lines that matter, and what it means. */
  public record CodeView(
      int number, int line, String code, String kind, String meaning, String source) {}

  static ReportView of(Report report, String address, boolean proofOnly) {
    if (report.diagnosis().isEmpty()) {
      return new ReportView(
          address,
          report.verdict(),
          "This is not a boot log",
          report.reason(),
          report.log().lineCount(),
          0,
          0,
          TrackView.none(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          false,
          0);
    }
    Report.Diagnosis d = report.diagnosis().get();
    List<Cause> shown =
        d.ranking().causes().stream()
            .filter(Cause::hasProof)
            .filter(c -> c.probability() >= LEAST_SHOWN)
            .limit(MOST_CAUSES)
            .toList();
    Map<Integer, List<Integer>> proof = new TreeMap<>();
    List<CauseView> causes = new ArrayList<>();
    for (Cause cause : shown) {
      causes.add(cause(causes.size() + 1, cause, proof));
    }
    List<LineCode> lineCodes = LineCode.of(d, shown);
    List<LineView> all = new ArrayList<>();
    int leftOut = 0;
    int total = d.boot().lines().size();
    for (int i = 0; i < total; i++) {
      LogLine line = d.boot().lines().get(i);
      List<Integer> proves = proof.getOrDefault(line.number(), List.of());
      if (proofOnly ? !proves.isEmpty() : !proves.isEmpty() || total - i <= MOST_LINES) {
        boolean matters = !proves.isEmpty() || LineCode.isNearTheStop(i, total);
        all.add(
            new LineView(
                line.number(),
                line.text(),
                proves,
                matters
                    ? parts(line.text(), lineCodes)
                    : List.of(new PartView(line.text(), "", 0))));
      } else {
        leftOut++;
      }
    }
    return new ReportView(
        address,
        report.verdict(),
        headline(report.verdict(), d),
        "",
        report.log().lineCount(),
        report.log().boots().size(),
        d.boot().number(),
        TrackView.of(d.trace()),
        notes(report.log().limits(), d),
        causes,
        d.trails().stream()
            .map(
                t ->
                    new TrailView(
                        t.trail().title(),
                        t.trail().why(),
                        t.trail().mattersWhen(),
                        t.hits().stream()
                            .limit(3)
                            .map(h -> new LineView(h.line(), h.text(), List.of()))
                            .toList()))
            .toList(),
        d.unexplained().stream().map(l -> new LineView(l.number(), l.text(), List.of())).toList(),
        codes(lineCodes),
        all,
        proofOnly,
        proofOnly ? 0 : leftOut);
  }

  private static List<CodeView> codes(List<LineCode> codes) {
    List<CodeView> views = new ArrayList<>();
    for (LineCode code : codes) {
      Meaning m = code.meaning();
      views.add(
          new CodeView(
              views.size() + 1, code.line(), m.code(), m.kind().title(), m.meaning(), m.source()));
    }
    return views;
  }

  /** A line in pieces, so that each is escaped for itself. */
  private static List<PartView> parts(String text, List<LineCode> codes) {
    List<PartView> parts = new ArrayList<>();
    int from = 0;
    for (Meaning meaning : Decoder.explain(text)) {
      int number = 0;
      for (int i = 0; i < codes.size() && number == 0; i++) {
        number = codes.get(i).says(meaning) ? i + 1 : 0;
      }
      if (number > 0 && meaning.end() > meaning.start()) {
        if (meaning.start() > from) {
          parts.add(new PartView(text.substring(from, meaning.start()), "", 0));
        }
        parts.add(new PartView(meaning.code(), meaning.meaning(), number));
        from = meaning.end();
      }
    }
    if (from < text.length()) {
      parts.add(new PartView(text.substring(from), "", 0));
    }
    return parts;
  }

  private static String headline(String verdict, Report.Diagnosis d) {
    return switch (verdict) {
      case "no-stall" -> "No stall found in this text (" + Percent.of(d.ranking().noStall()) + ")";
      case "unlisted" ->
          "The cause is not in the base, or the text does not show it ("
              + Percent.of(d.ranking().unlisted())
              + ")";
      default ->
          d.trace().known()
              ? "The boot stopped in the stage “" + d.trace().stage().word() + "”"
              : "The boot stopped; the paste does not tell in which stage";
    };
  }

  private static List<String> notes(List<String> limits, Report.Diagnosis d) {
    List<String> notes = new ArrayList<>(limits);
    for (Gap gap : d.trace().gaps()) {
      if (gap.seconds() >= 20) {
        notes.add(
            String.format(
                Locale.ROOT, "Silent for %.0f seconds before line %d.", gap.seconds(), gap.line()));
      }
    }
    for (Loop loop : d.trace().loops()) {
      if (loop.times() >= 8) {
        notes.add(
            "Comes "
                + loop.times()
                + " times, last on line "
                + loop.lastLine()
                + ": "
                + loop.text());
      }
    }
    return notes;
  }

  private static CauseView cause(int number, Cause cause, Map<Integer, List<Integer>> proof) {
    List<EvidenceView> reasonsFor = new ArrayList<>();
    for (Evidence evidence : Evidence.reasonsFor(cause)) {
      for (int line : evidence.lines()) {
        List<Integer> numbers = proof.computeIfAbsent(line, k -> new ArrayList<>());
        if (!numbers.contains(number)) {
          numbers.add(number);
        }
      }
      reasonsFor.add(evidence(evidence));
    }
    return new CauseView(
        number,
        cause.fault().id(),
        cause.fault().title(),
        cause.fault().general(),
        cause.fault().stage().word(),
        Percent.of(cause.probability()),
        (int) Math.max(1, Math.round(cause.probability() * 100)),
        cause.fault().about(),
        reasonsFor,
        Evidence.reasonsAgainst(cause).stream().map(ReportView::evidence).toList(),
        cause.fault().fixes().stream().map(ReportView::fix).toList());
  }

  private static EvidenceView evidence(Evidence evidence) {
    Map<Integer, String> lines = new LinkedHashMap<>();
    for (int i = 0; i < evidence.lines().size(); i++) {
      lines.put(evidence.lines().get(i), evidence.text().get(i));
    }
    List<LineView> few =
        lines.entrySet().stream()
            .limit(6)
            .map(e -> new LineView(e.getKey(), e.getValue(), List.of()))
            .toList();
    double weight = evidence.weight();
    String strength =
        weight >= 1
            ? String.format(Locale.ROOT, "speaks for it, × %.1f", weight)
            : String.format(Locale.ROOT, "speaks against it, × %.2f", weight);
    return new EvidenceView(evidence.says(), strength, few, lines.size() - few.size());
  }

  /** A fix for a page. */
  static FixView fix(Fix fix) {
    return new FixView(
        fix.title(),
        fix.minutes(),
        fix.risk().title(),
        fix.risk().compareTo(Risk.DATA) >= 0,
        fix.cures().word().replace('-', ' '),
        fix.needs(),
        fix.cautions(),
        fix.steps(),
        fix.prove(),
        fix.undo());
  }
}
