package standstill.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import standstill.base.Condition;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Plan;
import standstill.base.Risk;
import standstill.base.Stage;
import standstill.log.LogLine;
import standstill.match.Hit;
import standstill.match.Seen;
import standstill.match.SeenTrail;
import standstill.rank.Cause;
import standstill.rank.Factor;
import standstill.rank.StopBelief;
import standstill.trace.Gap;
import standstill.trace.Loop;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * A report as JSON; keys are stable and described in {@code docs/reference/json.md}. Line numbers
 * are 1-based lines of the input, probabilities lie between 0 and 1.
 */
public final class JsonReport {
  private static final ObjectMapper MAPPER =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private static final int MOST_STOPS = 3;

  private JsonReport() {}

  /**
   * Writes a report.
   *
   * @param top the most causes to write
   */
  public static String write(Report report, int top) {
    try {
      return MAPPER.writeValueAsString(toNode(report, top));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain nodes can always be written", e);
    }
  }

  /** The report as a tree. */
  public static ObjectNode toNode(Report report, int top) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("verdict", report.verdict());
    if (!report.reason().isEmpty()) {
      root.put("reason", report.reason());
    }
    ObjectNode input = root.putObject("input");
    input.put("lines", report.log().lineCount());
    input.put("boots", report.log().boots().size());
    input.put("boot", report.diagnosis().map(d -> d.boot().number()).orElse(0));
    report
        .diagnosis()
        .filter(d -> !d.whyBoot().isEmpty())
        .ifPresent(d -> input.put("bootBecause", d.whyBoot()));
    input.put("family", report.log().family());
    if (!report.log().limits().isEmpty()) {
      report.log().limits().forEach(input.putArray("limits")::add);
    }
    if (report.diagnosis().isEmpty()) {
      ObjectNode trace = root.putObject("trace");
      trace.putNull("stage");
      trace.putArray("covers");
      trace.putArray("milestones");
      trace.put("lastLine", 0);
      root.putArray("causes");
      root.putArray("unexplained");
      root.putArray("codes");
      return root;
    }
    Report.Diagnosis diagnosis = report.diagnosis().get();
    trace(root.putObject("trace"), diagnosis.trace());
    diagnosis.ranking().stop().ifPresent(stop -> stop(root.putObject("stop"), stop));
    ArrayNode stops = root.putArray("stops");
    diagnosis.ranking().stops().stream()
        .limit(MOST_STOPS)
        .forEach(stop -> stop(stops.addObject(), stop));
    ObjectNode rest = root.putObject("probabilities");
    rest.put("unlisted", rounded(diagnosis.ranking().notListed()));
    rest.put("no-stall", rounded(diagnosis.ranking().noStall()));
    ArrayNode causes = root.putArray("causes");
    List<Cause> shown =
        diagnosis.ranking().listed().stream().filter(Cause::hasProof).limit(top).toList();
    shown.forEach(cause -> cause(causes.addObject(), cause, diagnosis.given(cause)));
    diagnosis
        .look()
        .ifPresent(
            look -> {
              ObjectNode node = root.putObject("look");
              node.put("id", look.check().id());
              node.put("title", look.check().title());
              node.put("minutes", look.check().minutes());
              strings(node.putArray("how"), look.check().how());
            });
    ObjectNode system = root.putObject("system");
    diagnosis
        .cases()
        .forEach((id, words) -> words.stream().sorted().forEach(system.withArray(id)::add));
    ArrayNode trails = root.putArray("falseTrails");
    diagnosis.trails().forEach(trail -> trail(trails.addObject(), trail));
    ArrayNode unexplained = root.putArray("unexplained");
    for (LogLine line : diagnosis.unexplained()) {
      unexplained.addObject().put("line", line.number()).put("text", line.text());
    }
    diagnosis.machine().ifPresent(machine -> MachineJson.write(root.putObject("machine"), machine));
    ArrayNode codes = root.putArray("codes");
    LineCode.of(diagnosis, shown).forEach(code -> code(codes.addObject(), code));
    return root;
  }

  private static void stop(ObjectNode node, StopBelief belief) {
    node.put("id", belief.stop().id());
    node.put("title", belief.stop().title());
    node.put("probability", rounded(belief.probability()));
    TreeMap<Integer, String> lines = new TreeMap<>();
    for (Factor factor : belief.factors()) {
      for (Seen seen : factor.signs()) {
        seen.hits().forEach(hit -> lines.put(hit.line(), hit.text()));
      }
    }
    ArrayNode numbers = node.putArray("lines");
    lines.keySet().forEach(numbers::add);
    strings(node.putArray("text"), List.copyOf(lines.values()));
    ArrayNode factors = node.putArray("factors");
    for (Factor factor : belief.factors()) {
      factors
          .addObject()
          .put("kind", factor.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
          .put("value", rounded(factor.value()))
          .put("why", factor.why());
    }
  }

  private static void code(ObjectNode node, LineCode code) {
    node.put("line", code.line());
    node.put("code", code.meaning().code());
    node.put("kind", code.meaning().kind().word());
    node.put("meaning", code.meaning().meaning());
    node.put("source", code.meaning().source());
  }

  private static void trace(ObjectNode node, Trace trace) {
    node.put("stage", trace.stage().word());
    node.put("known", trace.known());
    stages(node.putArray("covers"), trace.covers());
    stages(node.putArray("complete"), trace.complete());
    ArrayNode milestones = node.putArray("milestones");
    for (Reached reached : trace.milestones()) {
      ObjectNode each = milestones.addObject();
      each.put("id", reached.milestone().id());
      each.put("title", reached.milestone().title());
      each.put("stage", reached.stage().word());
      each.put("line", reached.line());
      putSeconds(each, reached.seconds());
    }
    ArrayNode gaps = node.putArray("gaps");
    for (Gap gap : trace.gaps()) {
      gaps.addObject().put("line", gap.line()).put("seconds", rounded(gap.seconds()));
    }
    ArrayNode loops = node.putArray("loops");
    for (Loop loop : trace.loops()) {
      loops
          .addObject()
          .put("line", loop.line())
          .put("lastLine", loop.lastLine())
          .put("times", loop.times())
          .put("text", loop.text());
    }
    node.put("lastLine", trace.lastLine());
  }

  private static void stages(ArrayNode array, Collection<Stage> stages) {
    stages.stream().sorted().map(Stage::word).forEach(array::add);
  }

  private static void putSeconds(ObjectNode node, OptionalDouble seconds) {
    if (seconds.isPresent()) {
      node.put("seconds", seconds.getAsDouble());
    } else {
      node.putNull("seconds");
    }
  }

  private static void cause(ObjectNode node, Cause cause, Given given) {
    node.put("id", cause.fault().id());
    node.put("title", cause.fault().title());
    node.put("stage", cause.fault().stage().word());
    node.put("part", cause.fault().part());
    node.put("general", cause.fault().general());
    node.put("probability", rounded(cause.probability()));
    node.put("about", cause.fault().about());
    evidence(node.putArray("for"), Evidence.reasonsFor(cause));
    evidence(node.putArray("against"), Evidence.reasonsAgainst(cause));
    ArrayNode factors = node.putArray("factors");
    for (Factor factor : cause.factors()) {
      factors
          .addObject()
          .put("kind", factor.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
          .put("value", rounded(factor.value()))
          .put("why", factor.why());
    }
    ArrayNode fixes = node.putArray("fixes");
    cause.fault().fixes().forEach(fix -> fix(fixes.addObject(), fix, given));
  }

  private static void evidence(ArrayNode array, List<Evidence> evidence) {
    for (Evidence each : evidence) {
      ObjectNode node = array.addObject();
      node.put("sign", each.sign());
      node.put("says", each.says());
      node.put("weight", rounded(each.weight()));
      each.lines().forEach(node.withArray("lines")::add);
      each.text().forEach(node.withArray("text")::add);
      node.withArray("lines");
      node.withArray("text");
    }
  }

  private static void fix(ObjectNode node, Fix fix, Given given) {
    Plan plan = Plan.of(fix, given);
    node.put("id", fix.id());
    node.put("title", fix.title());
    strings(node.putArray("steps"), plan.texts());
    plan(node.putArray("plan"), plan.rows());
    plan(node.putArray("otherSystems"), plan.others());
    node.put("minutes", fix.minutes());
    node.put("cures", fix.cures().value());
    node.put("risk", fix.risk().word());
    strings(node.putArray("needs"), fix.needs());
    node.put("prove", fix.prove());
    node.put("undo", fix.undo());
    strings(node.putArray("cautions"), fix.cautions());
    node.put("lasts", fix.scope().lasting() ? "lasting" : "one-boot");
    node.put("first", fix.scope().first().orElse(null));
    strings(node.putArray("when"), fix.scope().when().stream().map(Condition::words).toList());
    node.put("versions", fix.scope().span().words());
  }

  private static void plan(ArrayNode array, List<Plan.Row> rows) {
    for (Plan.Row row : rows) {
      ObjectNode node = array.addObject();
      node.put("number", row.number());
      node.put("heading", row.heading());
      strings(node.putArray("for"), row.on().stream().map(c -> c.id()).toList());
      node.put("label", row.label());
      node.put("told", row.told());
      node.put("text", row.text());
      node.put("risk", row.risk().map(Risk::word).orElse(null));
      node.put("caution", row.caution());
      node.put("undo", row.undo());
      node.put("saveFirst", row.saveFirst());
    }
  }

  private static void strings(ArrayNode array, List<String> texts) {
    texts.forEach(array::add);
  }

  private static void trail(ObjectNode node, SeenTrail seen) {
    node.put("id", seen.trail().id());
    node.put("title", seen.trail().title());
    node.put("why", seen.trail().why());
    node.put("times", seen.times());
    ArrayNode lines = node.putArray("lines");
    ArrayNode text = node.putArray("text");
    for (Hit hit : seen.hits()) {
      lines.add(hit.line());
      text.add(hit.text());
    }
  }

  /** Six significant decimals: enough to tell causes apart, and the same on every machine. */
  private static double rounded(double value) {
    return value == 0 || Double.isInfinite(value)
        ? value
        : new java.math.BigDecimal(value).round(new java.math.MathContext(6)).doubleValue();
  }
}
