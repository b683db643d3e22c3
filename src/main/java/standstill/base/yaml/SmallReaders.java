package standstill.base.yaml;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Check;
import standstill.base.Circumstance;
import standstill.base.Example;
import standstill.base.Facts;
import standstill.base.Family;
import standstill.base.LineForm;
import standstill.base.Marks;
import standstill.base.Milestone;
import standstill.base.Rate;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.SignForm;
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
          "ends", Milestone.Proves.ENDS,
          "stops", Milestone.Proves.STOPS);

  private SmallReaders() {}

  static Optional<Check> check(EntryReader entries, BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, new Shapes(entries.scale()).check());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    List<Check.Answer> answers = new ArrayList<>();
    for (Fields answer : fields.maps("answers")) {
      answers.add(
          new Check.Answer(
              answer.text("id"), answer.text("text"), entries.chance(answer, "otherwise")));
    }
    EntryReader.distinct(fields, answers.stream().map(Check.Answer::id).toList());
    Check check =
        new Check(
            EntryReader.id(fields, file),
            fields.text("title"),
            fields.texts("how"),
            fields.number("minutes", 5),
            EntryReader.risk(fields),
            fields.texts("needs"),
            fields.texts("cautions"),
            EntryReader.conditions(fields),
            answers,
            EntryReader.sources(fields),
            EntryReader.reviewed(fields),
            fields.position("id"));
    return sink.hasErrors() ? Optional.empty() : Optional.of(check);
  }

  static List<Symptom> symptoms(Sink sink) {
    List<Symptom> symptoms = new ArrayList<>();
    for (Fields fields : Fields.list(sink, Shapes.symptoms())) {
      symptoms.add(
          new Symptom(
              fields.text("id"),
              fields.text("title"),
              EntryReader.stages(fields, "stages"),
              fields.text("look"),
              fields.texts("words"),
              EntryReader.reviewed(fields),
              fields.position()));
    }
    return symptoms;
  }

  static List<Synonyms> synonyms(Sink sink) {
    List<Synonyms> groups = new ArrayList<>();
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (Fields fields : Fields.list(sink, Shapes.synonyms())) {
      List<String> words = fields.texts("words");
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
    }
    return groups;
  }

  static Optional<Trail> trail(BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, Shapes.trail());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    List<Trail.TrailSign> signs = new ArrayList<>();
    for (Fields sign : fields.maps("signs")) {
      sign.pattern("line")
          .ifPresent(
              pattern -> {
                FaultReader.checkPattern(sign, "line", pattern);
                signs.add(
                    new Trail.TrailSign(
                        fields.text("id") + "/" + sign.text("id"),
                        pattern,
                        sign.texts("seen"),
                        sign.texts("unlike"),
                        EntryReader.printedBy(sign),
                        EntryReader.span(sign),
                        sign.position()));
              });
    }
    EntryReader.distinct(fields.maps("signs"));
    Trail trail =
        new Trail(
            EntryReader.id(fields, file),
            fields.text("title"),
            fields.texts("family"),
            signs,
            provisos(fields),
            fields.text("why"),
            fields.text("matters-when"),
            EntryReader.sources(fields),
            EntryReader.reviewed(fields),
            fields.position("id"));
    return sink.hasErrors() ? Optional.empty() : Optional.of(trail);
  }

  private static List<Trail.Proviso> provisos(Fields trail) {
    List<Trail.Proviso> all = new ArrayList<>();
    for (Fields fields : trail.maps("harmless-only-when")) {
      String key = fields.has("no-line") ? "no-line" : "line";
      boolean milestone = fields.has("reached") || fields.has("without");
      Optional<Pattern> pattern = milestone ? Optional.empty() : fields.pattern(key);
      pattern.ifPresent(p -> FaultReader.checkPattern(fields, key, p));
      if (!milestone && !(fields.has("seen") && fields.has("unlike"))) {
        fields.error(
            key, "pattern without texts that prove it", "add seen, and unlike for a near miss");
      }
      Optional<SignForm> form =
          milestone
              ? Optional.of(
                  new SignForm.Without(fields.text(fields.has("reached") ? "reached" : "without")))
              : pattern.map(p -> new SignForm.OnLine(p, 0, 1, 0));
      boolean there = fields.has("line") || fields.has("without");
      form.ifPresent(
          f ->
              all.add(
                  new Trail.Proviso(
                      f, there, fields.texts("seen"), fields.texts("unlike"), fields.position())));
    }
    return all;
  }

  /** The respects in which systems differ; a word stands for one case only. */
  static List<Circumstance> circumstances(Sink sink) {
    List<Circumstance> all = new ArrayList<>();
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (Fields fields : Fields.list(sink, Shapes.circumstances())) {
      String id = fields.text("id");
      List<Circumstance.Case> cases = new ArrayList<>();
      for (Fields each : fields.maps("cases")) {
        String word = each.text("id");
        Integer first = lines.putIfAbsent(word, each.position().line());
        if (first != null) {
          each.error("id", "second case '" + word + "'", "the first is on line " + first);
        }
        cases.add(new Circumstance.Case(word, each.text("title"), id, examples(each, "tells")));
      }
      all.add(new Circumstance(id, fields.text("title"), cases, fields.position()));
    }
    return all;
  }

  static Optional<Family> family(BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, Shapes.family());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    List<Pattern> ramdisk = examples(fields, "ramdisk").stream().map(Example::line).toList();
    List<LineForm> forms = new ArrayList<>();
    for (Fields form : fields.maps("line-forms")) {
      form.pattern("prefix")
          .ifPresent(
              p ->
                  forms.add(
                      new LineForm(
                          form.text("id"),
                          p,
                          form.text("holds").equals(Shapes.RECORD),
                          form.texts("seen"))));
    }
    List<Milestone> milestones = new ArrayList<>();
    for (Fields milestone : fields.maps("milestones")) {
      milestone
          .pattern("line")
          .ifPresent(
              p ->
                  milestones.add(
                      new Milestone(
                          milestone.name("id", "milestone"),
                          EntryReader.stage(milestone),
                          PROVES.getOrDefault(milestone.text("proves"), Milestone.Proves.WITHIN),
                          milestone.text("title"),
                          p,
                          milestone.texts("seen"))));
    }
    Facts facts = FactsReader.read(fields);
    Marks marks = marks(fields);
    return sink.hasErrors()
        ? Optional.empty()
        : Optional.of(
            new Family(
                id,
                fields.text("title"),
                fields.names("include", "family"),
                fields.text("not-diagnosed"),
                examples(fields, "recognise"),
                examples(fields, "may-be"),
                examples(fields, "begins"),
                examples(fields, "kernel-begins"),
                ramdisk,
                forms,
                milestones,
                facts,
                marks));
  }

  private static Marks marks(Fields fields) {
    for (Fields each : fields.maps("waiting")) {
      each.pattern("line")
          .filter(line -> !line.groups().contains(Marks.JOB))
          .ifPresent(
              line ->
                  each.error(
                      "line",
                      "no group '" + Marks.JOB + "'",
                      "put what is waited for into (?P<" + Marks.JOB + ">...)"));
    }
    return new Marks(
        examples(fields, "stamps"),
        examples(fields, "waiting"),
        examples(fields, "separators"),
        examples(fields, "headings"),
        fields.text("kernel-tag"));
  }

  private static List<Example> examples(Fields fields, String key) {
    List<Example> all = new ArrayList<>();
    for (Fields each : fields.maps(key)) {
      each.pattern("line").ifPresent(line -> all.add(new Example(line, each.texts("seen"))));
    }
    return all;
  }

  static Optional<Scale> scale(Sink sink, List<String> modelNumbers) {
    Optional<Fields> root = Fields.root(sink, Shapes.scale(modelNumbers));
    if (root.isEmpty() || sink.hasErrors()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    Map<Risk, Double> risks = new EnumMap<>(Risk.class);
    numbers(fields, "risk-minutes")
        .forEach((word, minutes) -> Risk.of(word).ifPresent(risk -> risks.put(risk, minutes)));
    return Optional.of(
        new Scale(
            numbers(fields, "chances"),
            numbers(fields, "frequencies"),
            titles(fields, "parts"),
            titles(fields, "needs"),
            risks,
            fields.decimal("need-minutes", 0),
            numbers(fields, "model")));
  }

  private static Map<String, Double> numbers(Fields fields, String key) {
    Map<String, Double> all = new LinkedHashMap<>();
    Fields map = fields.map(key);
    map.keys().forEach(k -> all.put(k, map.decimal(k, 0)));
    return all;
  }

  private static Map<String, String> titles(Fields fields, String key) {
    Map<String, String> all = new LinkedHashMap<>();
    Fields map = fields.map(key);
    map.keys().forEach(k -> all.put(k, map.text(k)));
    return all;
  }

  /** Former ids of fixes to those of their successors. */
  static Map<String, String> retired(Sink sink) {
    Map<String, String> all = new LinkedHashMap<>();
    for (Fields fields : Fields.list(sink, Shapes.retired())) {
      String was = fields.text("was");
      if (all.putIfAbsent(was, fields.name("now", "fix")) != null) {
        fields.error("was", "'" + was + "' is retired twice", "keep one of the lines");
      }
    }
    return all;
  }

  /** Rates by the ids of signs. */
  static Map<String, Rate> rates(Sink sink) {
    Map<String, Rate> all = new LinkedHashMap<>();
    Optional<Fields> root = Fields.root(sink, Shapes.rates());
    if (root.isEmpty()) {
      return all;
    }
    for (Fields rate : root.get().maps("signs")) {
      int seen = rate.number("seen", 0);
      int of = rate.number("of", 0);
      int rivalsSeen = rate.number("rivals-seen", 0);
      int rivals = rate.number("rivals", 0);
      if (seen > of || rivalsSeen > rivals) {
        rate.error("seen", "seen more often than there were boots", "run score --fit again");
      } else {
        all.put(
            rate.text("fault") + "/" + rate.text("sign"), new Rate(seen, of, rivalsSeen, rivals));
      }
    }
    return all;
  }
}
