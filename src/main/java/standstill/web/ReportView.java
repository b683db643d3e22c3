package standstill.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import standstill.base.Base;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.decode.Decoder;
import standstill.decode.Meaning;
import standstill.guide.Look;
import standstill.log.LogLine;
import standstill.match.Seen;
import standstill.rank.Cause;
import standstill.rank.Factor;
import standstill.rank.StopBelief;
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
 * @param otherBoots numbers of the boots that the page leads to: the first, the last, those around
 * @param stop what the boot ended in, with its lines
 * @param otherStops what else it may have ended in, where that is open
 * @param look the look that would settle most; its title is empty when none would
 * @param track the stages as a picture
 * @param causes the likeliest causes
 * @param codes the codes in the proof lines and near the stop, explained
 * @param lines the log, or its proof lines
 * @param machine what the log says of the machine
 */
public record ReportView(
    String address,
    String verdict,
    String headline,
    String reason,
    int lineCount,
    int boots,
    int boot,
    List<Integer> otherBoots,
    String whyBoot,
    StopView stop,
    List<StopView> otherStops,
    LookView look,
    TrackView track,
    List<String> notes,
    List<CauseView> causes,
    List<TrailView> trails,
    List<LineView> unexplained,
    List<CodeView> codes,
    List<LineView> lines,
    boolean proofOnly,
    int leftOut,
    MachineView machine) {

  private static final int MOST_CAUSES = 5;
  private static final double LEAST_SHOWN = 0.005;
  private static final double WORTH_NAMING = 0.1;
  private static final int MOST_OTHER_STOPS = 2;
  private static final int MOST_STOP_LINES = 4;
  private static final int MOST_LINES = 4_000;
  private static final int BOOTS_AROUND = 8;
  private static final int MOST_NOTES = 8;

  /** What a boot ended in. */
  public record StopView(String title, String percent, String about, List<LineView> lines) {
    static final StopView NONE = new StopView("", "", "", List.of());
  }

  /** A look, and what its answers would point to. */
  public record LookView(
      String id, String title, int minutes, List<String> how, List<AnswerView> answers) {
    static final LookView NONE = new LookView("", "", 0, List.of(), List.of());
  }

  /** An answer and the cause that it would make the likeliest; an empty cause when none. */
  public record AnswerView(String text, String cause) {}

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
      String cures,
      List<String> needs,
      List<String> cautions,
      PlanView plan,
      String prove,
      String undo,
      String terms) {}

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

  static ReportView of(Base base, Report report, String address, boolean proofOnly) {
    if (report.diagnosis().isEmpty()) {
      return new ReportView(
          address,
          report.verdict(),
          report.verdict().equals(Report.NOT_DIAGNOSED)
              ? "This boot is recognised and not diagnosed"
              : "This is not a boot log",
          report.reason(),
          report.log().lineCount(),
          0,
          0,
          List.of(),
          "",
          StopView.NONE,
          List.of(),
          LookView.NONE,
          TrackView.none(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          false,
          0,
          MachineView.none());
    }
    Report.Diagnosis d = report.diagnosis().get();
    List<Cause> shown = shown(d);
    Map<Integer, List<Integer>> proof = new TreeMap<>();
    List<CauseView> causes = new ArrayList<>();
    for (Cause cause : shown) {
      causes.add(cause(base, causes.size() + 1, cause, d.given(cause), proof));
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
        near(d.boot().number(), report.log().boots().size()),
        d.whyBoot(),
        d.ranking().stop().map(ReportView::stop).orElse(StopView.NONE),
        d.ranking().stops().stream()
            .skip(1)
            .filter(stop -> stop.probability() >= WORTH_NAMING)
            .limit(MOST_OTHER_STOPS)
            .map(ReportView::stop)
            .toList(),
        d.look().map(ReportView::look).orElse(LookView.NONE),
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
        proofOnly ? 0 : leftOut,
        MachineView.of(d.machine()));
  }

  /** The causes that the page shows. */
  static List<Cause> shown(Report.Diagnosis d) {
    return d.ranking().listed().stream()
        .filter(Cause::hasProof)
        .filter(c -> c.probability() >= LEAST_SHOWN)
        .limit(MOST_CAUSES)
        .toList();
  }

  /** Some of the numbers from 1 to the last: a log can hold hundreds of thousands of boots. */
  static List<Integer> near(int boot, int last) {
    TreeSet<Integer> some = new TreeSet<>(List.of(1, last));
    for (int i = Math.max(1, boot - BOOTS_AROUND); i <= Math.min(last, boot + BOOTS_AROUND); i++) {
      some.add(i);
    }
    return List.copyOf(some);
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

  private static StopView stop(StopBelief belief) {
    TreeMap<Integer, LineView> lines = new TreeMap<>();
    for (Factor factor : belief.factors()) {
      for (Seen seen : factor.signs()) {
        seen.hits().forEach(h -> lines.put(h.line(), new LineView(h.line(), h.text(), List.of())));
      }
    }
    return new StopView(
        belief.stop().title(),
        Percent.of(belief.probability()),
        belief.stop().about(),
        lines.descendingMap().values().stream()
            .limit(MOST_STOP_LINES)
            .sorted(java.util.Comparator.comparingInt(LineView::number))
            .toList());
  }

  private static LookView look(Look look) {
    return new LookView(
        look.check().id(),
        look.check().title(),
        look.check().minutes(),
        look.check().how(),
        look.check().answers().stream()
            .map(
                a -> {
                  Cause cause = look.points().get(a.id());
                  return new AnswerView(a.text(), cause == null ? "" : cause.fault().title());
                })
            .toList());
  }

  /** What the boot ended in, in plain words; why stands below it. */
  private static String headline(String verdict, Report.Diagnosis d) {
    if (verdict.equals("no-stall")) {
      return "Nothing stopped, as far as this text shows ("
          + Percent.of(d.ranking().noStall())
          + ")";
    }
    return d.ranking()
        .stop()
        .map(s -> (s.probability() >= 0.5 ? "" : "Perhaps: ") + s.stop().title())
        .orElse("The boot stopped");
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
    if (notes.size() > MOST_NOTES) {
      int more = notes.size() - MOST_NOTES;
      notes.subList(MOST_NOTES, notes.size()).clear();
      notes.add("And " + more + " more of this kind.");
    }
    return notes;
  }

  private static CauseView cause(
      Base base, int number, Cause cause, Given given, Map<Integer, List<Integer>> proof) {
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
        cause.fault().fixes().stream().map(fix -> fix(base, fix, given)).toList());
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
  static FixView fix(Base base, Fix fix, Given given) {
    return new FixView(
        fix.title(),
        fix.minutes(),
        fix.risk().title(),
        fix.cures().word().replace('-', ' '),
        FaultView.needs(base, fix.needs()),
        fix.cautions(),
        PlanView.of(fix, given),
        fix.prove(),
        fix.undo(),
        terms(base, fix));
  }

  /**
   * How long a fix holds, for which versions, and what comes before it; empty when nothing does.
   */
  private static String terms(Base base, Fix fix) {
    List<String> terms = new ArrayList<>();
    if (!fix.scope().lasting()) {
      terms.add("for one boot");
    }
    String span = fix.scope().span().words();
    if (!span.isEmpty()) {
      terms.add(span);
    }
    fix.scope()
        .first()
        .flatMap(base::fix)
        .ifPresent(first -> terms.add("only after: " + first.title()));
    return String.join(" · ", terms);
  }
}
