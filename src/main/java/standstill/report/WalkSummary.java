package standstill.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fix;
import standstill.base.Stage;
import standstill.guide.Course;
import standstill.guide.Guidance;
import standstill.guide.Step;
import standstill.rank.Cause;
import standstill.rank.Observations;

/**
 * What a walk found and what was done, to hand to somebody else: as text, Markdown or JSON.
 *
 * <p>Only log lines and values out of them can hold identifiers; the caller says how a text is
 * disguised, and every text goes through that.
 */
public final class WalkSummary {
  private static final int MOST_CAUSES = 5;
  private static final int MOST_LINES = 8;
  private static final double LEAST = 0.01;

  private final Base base;
  private final Course course;
  private final Guidance guidance;
  private final Optional<Report> report;
  private final UnaryOperator<String> disguise;

  /**
   * A summary.
   *
   * @param report of the log, when there is one
   * @param disguise replaces what names a person, a machine or a disk
   */
  public WalkSummary(
      Base base,
      Course course,
      Guidance guidance,
      Optional<Report> report,
      UnaryOperator<String> disguise) {
    this.base = base;
    this.course = course;
    this.guidance = guidance;
    this.report = report;
    this.disguise = disguise;
  }

  /** A heading with its items. */
  private record Part(String title, List<String> items, List<String> lines) {}

  /** Where the boot stopped, as a sentence. */
  private String where() {
    Optional<Report.Diagnosis> diagnosis = report.flatMap(Report::diagnosis);
    if (diagnosis.isPresent() && diagnosis.get().trace().known()) {
      return "Progress ended in the stage "
          + diagnosis.get().trace().stage().word()
          + ", on line "
          + diagnosis.get().trace().lastLine()
          + " of the log ("
          + report.get().log().lineCount()
          + " lines).";
    }
    if (course.stage().isPresent()) {
      return "Without a log; the boot is seen to stop in the stage "
          + course.stage().get().word()
          + ".";
    }
    return report.isPresent()
        ? "The log does not tell in which stage the boot stopped."
        : "Without a log.";
  }

  private List<String> proof() {
    TreeMap<Integer, String> lines = new TreeMap<>();
    report
        .flatMap(Report::diagnosis)
        .ifPresent(
            d ->
                d.ranking().causes().stream()
                    .filter(Cause::hasProof)
                    .limit(2)
                    .flatMap(c -> Evidence.reasonsFor(c).stream())
                    .forEach(
                        e -> {
                          for (int i = 0; i < e.lines().size() && lines.size() < MOST_LINES; i++) {
                            lines.put(e.lines().get(i), e.text().get(i));
                          }
                        }));
    return lines.entrySet().stream().map(e -> e.getKey() + ": " + e.getValue()).toList();
  }

  private List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    parts.add(new Part("What was found", List.of(where()), proof()));
    if (!course.sees().isEmpty()) {
      parts.add(
          new Part(
              "What is seen",
              course.sees().stream()
                  .map(id -> base.symptom(id).map(s -> s.title()).orElse(id))
                  .toList(),
              List.of()));
    }
    List<String> done = course.turns().stream().map(this::said).toList();
    parts.add(
        new Part(
            "What was asked and done", done.isEmpty() ? List.of("Nothing yet.") : done, List.of()));
    add(parts, "Helped for one boot only", course.temporary(base).stream().map(this::fixTitle));
    add(parts, "Tried, without help", course.tried().stream().map(this::fixTitle));
    add(parts, "Open: the answer is not known", course.unknown().stream().map(this::question));
    if (!guidance.contradictions().isEmpty()) {
      parts.add(
          new Part(
              "What does not fit together",
              guidance.contradictions().stream().map(c -> contradiction(base, c)).toList(),
              List.of()));
    }
    List<String> causes = new ArrayList<>();
    guidance.ranking().causes().stream()
        .filter(c -> c.probability() >= LEAST)
        .limit(MOST_CAUSES)
        .forEach(
            c ->
                causes.add(
                    Percent.of(c.probability())
                        + "  "
                        + c.fault().title()
                        + " ["
                        + c.fault().id()
                        + "]"));
    if (guidance.ranking().unlisted() >= LEAST) {
      causes.add(
          Percent.of(guidance.ranking().unlisted()) + "  A cause that the base does not list");
    }
    if (guidance.ranking().noStall() >= LEAST) {
      causes.add(Percent.of(guidance.ranking().noStall()) + "  Nothing stalled");
    }
    parts.add(new Part("Likely causes now", causes, List.of()));
    add(parts, "Left: neither tried nor ruled out", left().stream().map(WalkSummary::left));
    parts.add(new Part("Where it stands", List.of(standing()), List.of()));
    return parts;
  }

  private static void add(List<Part> parts, String title, Stream<String> items) {
    List<String> all = items.toList();
    if (!all.isEmpty()) {
      parts.add(new Part(title, all, List.of()));
    }
  }

  private List<Step.Left> left() {
    return course.cured(base).isEmpty() && guidance.step() instanceof Step.HandOver over
        ? over.left()
        : List.of();
  }

  /** What is left of a repair's chances and risk, as a sentence. */
  public static String left(Step.Left left) {
    return String.format(
        Locale.ROOT,
        "%s (%d min, %s; cures with %s; %s)",
        left.fix().title(),
        left.fix().minutes(),
        left.fix().risk().title(),
        Percent.of(left.chance()),
        left.why());
  }

  /** The state of the walk as a sentence. */
  private String standing() {
    Optional<String> cured = course.cured(base);
    if (cured.isPresent()) {
      return "Repaired: " + fixTitle(cured.get()) + ".";
    }
    Step step = guidance.step();
    if (step instanceof Step.Ask ask) {
      return "Next question: " + ask.check().title();
    }
    if (step instanceof Step.Repair repair) {
      return (course.temporary(base).isEmpty()
              ? "Next repair: "
              : "You are in; next, to make it hold: ")
          + repair.fix().title()
          + ".";
    }
    if (step instanceof Step.HandOver over) {
      return over.reason();
    }
    if (step instanceof Step.Follow follow) {
      return "Next: the short walk “" + follow.walk().title() + "”.";
    }
    return "Next: get the text that the boot prints.";
  }

  private String fixTitle(String id) {
    return base.fix(id).map(Fix::title).orElse(id);
  }

  private String said(Course.Turn turn) {
    return switch (turn.kind()) {
      case CHECK -> question(turn.id()) + " – " + answer(base, turn.id(), turn.reply());
      case FIX -> fixTitle(turn.id()) + " – " + reply(turn.reply());
      case WALK -> walk(base, turn);
      case LOG -> "Getting a log – not possible";
    };
  }

  /** A walk written by hand and where it ended. */
  private static String walk(Base base, Course.Turn turn) {
    return base.walk(turn.id()).map(w -> w.title()).orElse(turn.id())
        + " – "
        + end(base, turn.reply());
  }

  /** Where a walk written by hand ended, in words. */
  public static String end(Base base, String reply) {
    return switch (reply) {
      case Course.NO_CAUSE -> "it came to no cause";
      case Course.SKIP -> "skipped";
      default -> "it came to: " + base.fault(reply).map(f -> f.title()).orElse(reply);
    };
  }

  private String question(String check) {
    return base.check(check).map(Check::title).orElse(check);
  }

  /** An answer in words. */
  public static String answer(Base base, String check, String answer) {
    if (answer.equals(Observations.UNKNOWN)) {
      return "don't know";
    }
    if (answer.equals(Course.SKIP)) {
      return "skipped";
    }
    return base.check(check).flatMap(c -> c.answer(answer)).map(a -> a.text()).orElse(answer);
  }

  /** The reply to a repair in words. */
  public static String reply(String reply) {
    return switch (reply) {
      case Course.HELPED -> "it helped";
      case Course.NO_HELP -> "it did not help";
      case Course.TRY -> "to be tried";
      default -> "skipped";
    };
  }

  /** A contradiction as a sentence. */
  public static String contradiction(Base base, Guidance.Contradiction c) {
    return String.format(
        Locale.ROOT,
        "“%s” was answered with “%s”, which everything else makes very unlikely (%s). Look once more; if it"
            + " is so, the log or another answer misleads.",
        base.check(c.check()).map(Check::title).orElse(c.check()),
        answer(base, c.check(), c.answer()),
        Percent.of(c.chance()));
  }

  /** The summary as plain text. */
  public String text() {
    StringBuilder out = new StringBuilder("Standstill: summary of a walk\n");
    for (Part part : parts()) {
      out.append('\n').append(part.title()).append('\n');
      part.items().forEach(i -> out.append("- ").append(disguise.apply(i)).append('\n'));
      part.lines().forEach(l -> out.append("    ").append(disguise.apply(l)).append('\n'));
    }
    return out.toString();
  }

  /** The summary as Markdown (CommonMark). */
  public String markdown() {
    StringBuilder out = new StringBuilder("# Standstill: summary of a walk\n");
    for (Part part : parts()) {
      out.append("\n## ").append(part.title()).append("\n\n");
      part.items().forEach(i -> out.append("- ").append(escaped(disguise.apply(i))).append('\n'));
      if (!part.lines().isEmpty()) {
        List<String> lines = part.lines().stream().map(disguise).toList();
        String fence = "```";
        while (String.join("\n", lines).contains(fence)) {
          fence += "`";
        }
        out.append('\n').append(fence).append('\n');
        lines.forEach(l -> out.append(l).append('\n'));
        out.append(fence).append('\n');
      }
    }
    return out.toString();
  }

  /** What CommonMark would take for markup is escaped with a backslash. */
  private static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    for (char c : text.toCharArray()) {
      if ("\\`*_[]<>#|&~".indexOf(c) >= 0) {
        out.append('\\');
      }
      out.append(c);
    }
    return out.toString();
  }

  /** The summary as JSON. */
  public String json() {
    ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    ObjectNode root = mapper.createObjectNode();
    Optional<Stage> stage = course.stage();
    Optional<Report.Diagnosis> diagnosis = report.flatMap(Report::diagnosis);
    if (diagnosis.isPresent() && diagnosis.get().trace().known()) {
      stage = Optional.of(diagnosis.get().trace().stage());
    }
    root.put("stage", stage.map(Stage::word).orElse(null));
    root.put("log", report.isPresent());
    strings(root.putArray("lines"), proof());
    strings(root.putArray("symptoms"), course.sees());
    strings(root.putArray("triedBefore"), course.before());
    strings(root.putArray("lacks"), course.lacks());
    strings(root.putArray("tried"), course.tried());
    strings(root.putArray("temporary"), course.temporary(base));
    strings(root.putArray("unknown"), course.unknown());
    strings(root.putArray("left"), left().stream().map(l -> l.fix().id()).toList());
    ArrayNode turns = root.putArray("turns");
    for (Course.Turn turn : course.turns()) {
      turns
          .addObject()
          .put("kind", turn.kind().name().toLowerCase(Locale.ROOT))
          .put("id", turn.id())
          .put("reply", turn.reply())
          .put("words", disguise.apply(said(turn)));
    }
    ArrayNode causes = root.putArray("causes");
    guidance.ranking().causes().stream()
        .limit(MOST_CAUSES)
        .forEach(
            c ->
                causes
                    .addObject()
                    .put("id", c.fault().id())
                    .put("title", c.fault().title())
                    .put("probability", Math.round(c.probability() * 1e6) / 1e6));
    root.put("unlisted", Math.round(guidance.ranking().unlisted() * 1e6) / 1e6);
    root.put("noStall", Math.round(guidance.ranking().noStall() * 1e6) / 1e6);
    strings(
        root.putArray("contradictions"),
        guidance.contradictions().stream().map(Guidance.Contradiction::check).toList());
    root.put("cured", course.cured(base).orElse(null));
    root.put("standing", disguise.apply(standing()));
    try {
      return mapper.writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain nodes can always be written", e);
    }
  }

  private void strings(ArrayNode array, Iterable<String> texts) {
    texts.forEach(t -> array.add(disguise.apply(t)));
  }
}
