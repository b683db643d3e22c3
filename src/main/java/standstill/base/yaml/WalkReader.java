package standstill.base.yaml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import standstill.base.Walk;

/**
 * Reads a walk written by hand.
 *
 * <p>Each answer leads to a later step or to an end, so that no walk can run in a circle or stop
 * without an end; each step but the first is led to by an answer of a step that can be reached.
 */
final class WalkReader {
  private static final Map<String, Walk.Leads> LEADS =
      Map.of(
          "then", Walk.Leads.STEP,
          "fault", Walk.Leads.FAULT,
          "fix", Walk.Leads.FIX,
          "hand-over", Walk.Leads.HAND_OVER);

  private WalkReader() {}

  static Optional<Walk> read(BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, Shapes.walk());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    Fields offered = fields.map("offered-at");
    if (fields.has("offered-at") && offered.keys().isEmpty()) {
      fields.error(
          "offered-at",
          "walk is offered nowhere",
          "name symptoms, stages or faults at which it applies");
    }
    List<Walk.Step> steps = new ArrayList<>();
    fields.maps("steps").forEach(place -> steps.add(step(place)));
    order(steps, sink);
    Walk walk =
        new Walk(
            EntryReader.id(fields, file),
            fields.text("title"),
            fields.text("about"),
            offered.texts("symptoms"),
            EntryReader.stages(offered, "stages"),
            offered.texts("faults"),
            steps,
            EntryReader.sources(fields),
            EntryReader.reviewed(fields),
            fields.position("id"));
    return sink.hasErrors() ? Optional.empty() : Optional.of(walk);
  }

  private static Walk.Step step(Fields fields) {
    List<Walk.Answer> answers = new ArrayList<>();
    fields.maps("answers").forEach(answer -> answer(answer).ifPresent(answers::add));
    EntryReader.distinct(fields, answers.stream().map(Walk.Answer::id).toList());
    Walk.Step step =
        new Walk.Step(
            fields.text("id"),
            fields.text("ask"),
            fields.texts("how"),
            fields.number("minutes", 2),
            EntryReader.risk(fields),
            fields.texts("cautions"),
            answers,
            fields.position("id"));
    String all = String.join(" ", step.cautions()).toLowerCase(Locale.ROOT);
    boolean missing =
        switch (step.risk()) {
          case DATA -> !all.contains("backup") && !all.contains("back up");
          case FIRMWARE -> !all.contains("power");
          case HANDS_INSIDE -> !all.contains("mains") || !all.contains("static");
          default -> false;
        };
    if (missing) {
      fields.error(
          "risk",
          "step with risk '" + step.risk().word() + "' lacks the usual caution",
          "add to cautions: a backup for data, what to do against a power cut for firmware, mains and"
              + " static for hands-inside");
    }
    return step;
  }

  private static Optional<Walk.Answer> answer(Fields fields) {
    return Shapes.LEADS.stream()
        .filter(fields::has)
        .findFirst()
        .map(
            key ->
                new Walk.Answer(
                    fields.text("id"),
                    fields.text("text"),
                    Objects.requireNonNull(LEADS.get(key)),
                    fields.text(key),
                    fields.position(key)));
  }

  private static void order(List<Walk.Step> steps, Sink sink) {
    Map<String, Integer> places = new LinkedHashMap<>();
    for (int i = 0; i < steps.size(); i++) {
      if (places.putIfAbsent(steps.get(i).id(), i) != null) {
        sink.error(steps.get(i).where(), "second step with the id '" + steps.get(i).id() + "'", "");
      }
    }
    Set<String> reached = new HashSet<>();
    for (int i = 0; i < steps.size(); i++) {
      Walk.Step step = steps.get(i);
      if (i > 0 && !reached.contains(step.id())) {
        sink.error(
            step.where(),
            "step '" + step.id() + "' is never reached",
            "lead an answer of an earlier step to it with then:, or take it out");
      }
      for (Walk.Answer answer : step.answers()) {
        if (answer.leads() != Walk.Leads.STEP) {
          continue;
        }
        Integer to = places.get(answer.to());
        if (to == null) {
          sink.error(
              answer.where(),
              "unknown step '" + answer.to() + "'",
              Words.advice(answer.to(), places.keySet()));
        } else if (to <= i) {
          sink.error(
              answer.where(),
              "answer leads back to '" + answer.to() + "'",
              "steps lead only to later ones, so that no walk runs in a circle");
        } else if (i == 0 || reached.contains(step.id())) {
          reached.add(answer.to());
        }
      }
    }
  }
}
