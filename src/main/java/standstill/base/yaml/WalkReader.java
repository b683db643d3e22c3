package standstill.base.yaml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Risk;
import standstill.base.Walk;

/**
 * Reads a walk written by hand.
 *
 * <p>Each answer leads to a later step or to an end, so that no walk can run in a circle or stop
 * without an end; each step but the first is led to by an answer of a step that can be reached.
 */
final class WalkReader {
  private static final Map<String, Walk.Leads> LEADS = new LinkedHashMap<>();

  static {
    LEADS.put("then", Walk.Leads.STEP);
    LEADS.put("fault", Walk.Leads.FAULT);
    LEADS.put("fix", Walk.Leads.FIX);
    LEADS.put("hand-over", Walk.Leads.HAND_OVER);
  }

  private WalkReader() {}

  static Optional<Walk> read(BaseText file, Sink sink) {
    Optional<Fields> root = EntryReader.root(sink, "a walk");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    String title = fields.text("title");
    String about = fields.text("about");
    List<String> symptoms = new ArrayList<>();
    List<standstill.base.Stage> stages = new ArrayList<>();
    List<String> faults = new ArrayList<>();
    fields
        .map("offered-at", true)
        .ifPresent(
            offered -> {
              symptoms.addAll(offered.texts("symptoms", false));
              stages.addAll(EntryReader.stages(offered, "stages", false));
              faults.addAll(offered.texts("faults", false));
              offered.done();
              if (symptoms.isEmpty() && stages.isEmpty() && faults.isEmpty()) {
                fields.error(
                    "offered-at",
                    "walk is offered nowhere",
                    "name symptoms, stages or faults at which it applies");
              }
            });
    List<Walk.Step> steps = new ArrayList<>();
    List<Fields> places = fields.maps("steps", true, "a step");
    for (Fields place : places) {
      steps.add(step(place, sink));
    }
    order(steps, sink);
    Walk walk =
        new Walk(
            id,
            title,
            about,
            symptoms,
            stages,
            faults,
            steps,
            EntryReader.sources(fields),
            fields.position("id"));
    fields.done();
    return sink.hasErrors() ? Optional.empty() : Optional.of(walk);
  }

  private static Walk.Step step(Fields fields, Sink sink) {
    List<Walk.Answer> answers = new ArrayList<>();
    for (Fields answer : fields.maps("answers", true, "an answer")) {
      answer(answer).ifPresent(answers::add);
      answer.done();
    }
    if (answers.size() > 5 || (answers.size() < 2 && !sink.hasErrors())) {
      fields.error("answers", "a step has two to five answers", "");
    }
    if (answers.stream().map(Walk.Answer::id).distinct().count() < answers.size()) {
      fields.error("answers", "two answers have the same id", "");
    }
    Walk.Step step =
        new Walk.Step(
            EntryReader.id(fields),
            fields.text("ask"),
            fields.texts("how", false),
            fields.number("minutes", 2, 1, 1_000),
            fields.has("risk") ? EntryReader.risk(fields) : Risk.NONE,
            fields.texts("cautions", false),
            answers,
            fields.position("id"));
    fields.done();
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
    String id = EntryReader.id(fields);
    String text = fields.text("text");
    List<String> ends = LEADS.keySet().stream().filter(fields::has).toList();
    if (ends.size() != 1) {
      fields.error(
          ends.isEmpty() ? "id" : ends.get(1),
          ends.isEmpty() ? "answer leads nowhere" : "answer leads to two places",
          "give it exactly one of: " + String.join(", ", LEADS.keySet()));
      ends.forEach(fields::text);
      return Optional.empty();
    }
    String key = ends.get(0);
    Walk.Leads leads = java.util.Objects.requireNonNull(LEADS.get(key));
    return Optional.of(new Walk.Answer(id, text, leads, fields.text(key), fields.position(key)));
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
