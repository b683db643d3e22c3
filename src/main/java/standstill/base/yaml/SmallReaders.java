package standstill.base.yaml;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Check;
import standstill.base.Example;
import standstill.base.Family;
import standstill.base.LineForm;
import standstill.base.Milestone;
import standstill.base.Rate;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.Symptom;
import standstill.base.Synonyms;
import standstill.base.Trail;
import standstill.text.Pattern;

/**
 * Readers of the kinds of files that take a screenful each: checks, symptoms, false trails,
 * families, scale, rates.
 */
final class SmallReaders {
  private static final Map<String, Milestone.Proves> PROVES =
      Map.of(
          "begins", Milestone.Proves.BEGINS,
          "within", Milestone.Proves.WITHIN,
          "ends", Milestone.Proves.ENDS);

  private SmallReaders() {}

  static Optional<Check> check(EntryReader entries, BaseText file, Sink sink) {
    Optional<Fields> root = EntryReader.root(sink, "a check");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    List<Check.Answer> answers = new ArrayList<>();
    String id = EntryReader.id(fields, file);
    for (Fields answer : fields.maps("answers", true, "an answer")) {
      answers.add(
          new Check.Answer(
              EntryReader.id(answer), answer.text("text"), entries.chance(answer, "otherwise")));
      answer.done();
    }
    if (answers.size() < 2 || answers.size() > 5) {
      fields.error(
          "answers", "a check has two to five answers", "\"I don't know\" is always offered");
    }
    if (answers.stream().map(Check.Answer::id).distinct().count() < answers.size()) {
      fields.error("answers", "two answers have the same id", "");
    }
    Check check =
        new Check(
            id,
            fields.text("title"),
            fields.texts("how", true),
            fields.number("minutes", 5, 1, 1_000),
            EntryReader.risk(fields),
            entries.needs(fields),
            fields.texts("cautions", false),
            answers,
            EntryReader.sources(fields),
            fields.position("id"));
    fields.done();
    return sink.hasErrors() ? Optional.empty() : Optional.of(check);
  }

  static List<Symptom> symptoms(Sink sink) {
    List<Symptom> symptoms = new ArrayList<>();
    Optional<org.yaml.snakeyaml.nodes.Node> root = new Nodes(sink).compose();
    if (root.isEmpty()) {
      return symptoms;
    }
    if (!(root.get() instanceof org.yaml.snakeyaml.nodes.SequenceNode sequence)) {
      sink.error(
          root.get().getStartMark(), "symptoms are not a list", "write one '- id: ...' each");
      return symptoms;
    }
    for (var node : sequence.getValue()) {
      Fields fields = Fields.of(sink, node, "a symptom");
      symptoms.add(
          new Symptom(
              EntryReader.id(fields),
              fields.text("title"),
              EntryReader.stages(fields, "stages", true),
              fields.text("look"),
              fields.texts("words", false),
              fields.position()));
      fields.done();
    }
    return symptoms;
  }

  static List<Synonyms> synonyms(Sink sink) {
    List<Synonyms> groups = new ArrayList<>();
    Optional<org.yaml.snakeyaml.nodes.Node> root = new Nodes(sink).compose();
    if (root.isEmpty()) {
      return groups;
    }
    if (!(root.get() instanceof org.yaml.snakeyaml.nodes.SequenceNode sequence)) {
      sink.error(
          root.get().getStartMark(), "synonyms are not a list", "write one '- words: [...]' each");
      return groups;
    }
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (var node : sequence.getValue()) {
      Fields fields = Fields.of(sink, node, "a group of synonyms");
      List<String> words = fields.texts("words", true);
      if (words.size() == 1) {
        fields.error("words", "a group of one word", "name at least two, or leave the group out");
      }
      for (String word : words) {
        int line = fields.position().line();
        Integer first = lines.putIfAbsent(word.toLowerCase(java.util.Locale.ROOT), line);
        if (first != null) {
          fields.error(
              "words",
              "'" + word + "' stands in two places",
              "the first is on line " + first + "; join the groups or keep one");
        }
      }
      groups.add(new Synonyms(words, fields.position()));
      fields.done();
    }
    return groups;
  }

  static Optional<Trail> trail(BaseText file, Sink sink) {
    Optional<Fields> root = EntryReader.root(sink, "a false trail");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    List<Trail.TrailSign> signs = new ArrayList<>();
    for (Fields sign : fields.maps("signs", true, "a sign")) {
      Optional<Pattern> line = sign.pattern("line");
      List<String> seen = sign.texts("seen", true);
      List<String> unlike = sign.texts("unlike", true);
      line.ifPresent(
          pattern -> {
            FaultReader.checkPattern(sign, pattern);
            signs.add(
                new Trail.TrailSign(
                    pattern, seen, unlike, EntryReader.printedBy(sign), sign.position()));
          });
      sign.done();
    }
    Trail trail =
        new Trail(
            id,
            fields.text("title"),
            fields.texts("family", true),
            signs,
            fields.text("why"),
            fields.text("matters-when"),
            EntryReader.sources(fields),
            fields.position("id"));
    fields.done();
    return sink.hasErrors() ? Optional.empty() : Optional.of(trail);
  }

  static Optional<Family> family(BaseText file, Sink sink) {
    Optional<Fields> root = EntryReader.root(sink, "a family");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    String title = fields.text("title");
    List<Example> recognise = examples(fields, "recognise");
    List<Example> begins = examples(fields, "begins");
    List<Pattern> ramdisk = examples(fields, "ramdisk").stream().map(Example::line).toList();
    List<LineForm> forms = new ArrayList<>();
    for (Fields form : fields.maps("line-forms", true, "a line form")) {
      String formId = EntryReader.id(form);
      Optional<Pattern> prefix = form.pattern("prefix");
      List<String> seen = form.texts("seen", true);
      form.done();
      prefix.ifPresent(p -> forms.add(new LineForm(formId, p, seen)));
    }
    List<Milestone> milestones = new ArrayList<>();
    for (Fields milestone : fields.maps("milestones", true, "a milestone")) {
      String milestoneId = EntryReader.id(milestone);
      var stage = EntryReader.stage(milestone);
      Milestone.Proves proves =
          milestone
              .word("proves", PROVES.keySet())
              .map(PROVES::get)
              .orElse(Milestone.Proves.WITHIN);
      String milestoneTitle = milestone.text("title");
      Optional<Pattern> line = milestone.pattern("line");
      List<String> seen = milestone.texts("seen", true);
      milestone.done();
      line.ifPresent(
          p -> milestones.add(new Milestone(milestoneId, stage, proves, milestoneTitle, p, seen)));
    }
    fields.done();
    return sink.hasErrors()
        ? Optional.empty()
        : Optional.of(new Family(id, title, recognise, begins, ramdisk, forms, milestones));
  }

  private static List<Example> examples(Fields fields, String key) {
    List<Example> all = new ArrayList<>();
    for (Fields each : fields.maps(key, true, "an entry of " + key)) {
      Optional<Pattern> line = each.pattern("line");
      List<String> seen = each.texts("seen", true);
      each.done();
      line.ifPresent(pattern -> all.add(new Example(pattern, seen)));
    }
    return all;
  }

  static Optional<Scale> scale(Sink sink, List<String> modelNumbers) {
    Optional<Fields> root = EntryReader.root(sink, "the scale");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    Map<String, Double> chances = numbers(fields, "chances", 1e-6, 1 - 1e-6);
    Map<String, Double> frequencies = numbers(fields, "frequencies", 1e-3, 1_000);
    Map<String, String> parts = titles(fields, "parts");
    Map<String, String> needs = titles(fields, "needs");
    Map<Risk, Double> risks = new EnumMap<>(Risk.class);
    numbers(fields, "risk-minutes", 0, 10_000)
        .forEach((word, minutes) -> Risk.of(word).ifPresent(risk -> risks.put(risk, minutes)));
    for (Risk risk : Risk.values()) {
      if (!risks.containsKey(risk)) {
        fields.error("risk-minutes", "risk '" + risk.word() + "' has no minutes", "");
      }
    }
    double needMinutes = fields.decimal("need-minutes", 0, 10_000);
    Map<String, Double> model = numbers(fields, "model", -1_000, 1_000);
    for (String name : modelNumbers) {
      if (!model.containsKey(name)) {
        fields.error("model", "number '" + name + "' is missing", "");
      }
    }
    fields.done();
    return sink.hasErrors()
        ? Optional.empty()
        : Optional.of(new Scale(chances, frequencies, parts, needs, risks, needMinutes, model));
  }

  private static Map<String, Double> numbers(Fields fields, String key, double least, double most) {
    Map<String, Double> all = new LinkedHashMap<>();
    fields
        .map(key, true)
        .ifPresent(
            map -> List.copyOf(map.keys()).forEach(k -> all.put(k, map.decimal(k, least, most))));
    return all;
  }

  private static Map<String, String> titles(Fields fields, String key) {
    Map<String, String> all = new LinkedHashMap<>();
    fields
        .map(key, true)
        .ifPresent(map -> List.copyOf(map.keys()).forEach(k -> all.put(k, map.text(k))));
    return all;
  }

  /**
   * Rates by "fault id, blank, pattern": they survive when signs are added before the one that was
   * measured.
   */
  static Map<String, Rate> rates(Sink sink) {
    Map<String, Rate> all = new LinkedHashMap<>();
    Optional<Fields> root = EntryReader.root(sink, "the rates");
    if (root.isEmpty()) {
      return all;
    }
    Fields fields = root.get();
    int boots = fields.number("boots", 0, 0, 1_000_000);
    for (Fields rate : fields.maps("signs", false, "a rate")) {
      int seen = rate.number("seen", 0, 0, 1_000_000);
      int of = rate.number("of", boots, 0, 1_000_000);
      String key = rate.text("fault") + " " + rate.text("sign");
      rate.done();
      if (seen > of) {
        rate.error("seen", "seen more often than there were boots", "run score --fit again");
      } else {
        all.put(key, new Rate(seen, of));
      }
    }
    fields.done();
    return all;
  }
}
