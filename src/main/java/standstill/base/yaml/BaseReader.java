package standstill.base.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Circumstance;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Rate;
import standstill.base.Scale;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stop;
import standstill.base.Symptom;
import standstill.base.Synonyms;
import standstill.base.Trail;
import standstill.base.Walk;
import standstill.text.Pattern;
import standstill.text.Position;
import standstill.text.Problem;

/** Reads a whole base from its files: the entry of this room. */
public final class BaseReader {
  /** Name of the file that holds the scale. */
  public static final String SCALE = "scale.yaml";

  /** Name of the file that leads from former ids of fixes to their successors. */
  private static final String RETIRED = "retired.yaml";

  /** Name of the file that says in what respects systems differ. */
  private static final String CIRCUMSTANCES = "circumstances.yaml";

  /** What an id looks like, for people. */
  public static final String ID_FORM = Scalars.ID_FORM;

  /** Whether a text has the form of an id. */
  public static boolean isId(String text) {
    return Scalars.isId(text);
  }

  private static final int MOST_PROBLEMS = 2_000;

  /** Most repetitions by counts in all patterns together. */
  static final int MOST_REPEATED = 20_000;

  private final List<Problem> problems = new ArrayList<>();
  private final Set<String> broken = new HashSet<>();
  private final Map<String, Position> mentions = new HashMap<>();
  private final Map<String, Position> familyFiles = new HashMap<>();
  private final List<String> modelNumbers;
  private Position retiredFile = Position.ofFile(RETIRED);

  private BaseReader(List<String> modelNumbers) {
    this.modelNumbers = modelNumbers;
  }

  /**
   * Reads the files.
   *
   * @param files all files of the base; those that are none of its kinds are ignored
   * @param modelNumbers names that the scale's model must have
   */
  public static Loaded read(Collection<BaseText> files, Collection<String> modelNumbers) {
    return read(files, List.of(), modelNumbers);
  }

  /**
   * Reads the files that could be taken.
   *
   * @param files all files of the base; those that are none of its kinds are ignored
   * @param refused what is wrong with the others
   * @param modelNumbers names that the scale's model must have
   */
  public static Loaded read(
      Collection<BaseText> files, Collection<Problem> refused, Collection<String> modelNumbers) {
    BaseReader reader = new BaseReader(List.copyOf(modelNumbers));
    for (Problem problem : refused) {
      reader.problems.add(problem);
      reader.broken.add(
          problem.position().file().replaceFirst("^.*/", "").replaceFirst("\\.yaml$", ""));
    }
    return reader.readAll(files);
  }

  private Loaded readAll(Collection<BaseText> files) {
    Scale scale =
        files.stream()
            .filter(f -> f.name().equals(SCALE))
            .findFirst()
            .flatMap(f -> with(f, sink -> SmallReaders.scale(sink, modelNumbers)))
            .orElse(null);
    if (scale == null) {
      if (problems.isEmpty()) {
        problems.add(
            Problem.error(
                Position.ofFile(SCALE), "file is missing", "a base needs its scale of words"));
      }
      Scale none = new Scale(Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), 0, Map.of());
      return new Loaded(
          new Base(none, List.of(), List.of(), List.of(), List.of(), List.of(), Map.of()),
          problems);
    }
    List<Circumstance> circumstances =
        files.stream()
            .filter(f -> f.name().equals(CIRCUMSTANCES))
            .findFirst()
            .map(f -> with(f, SmallReaders::circumstances))
            .orElse(List.of());
    StepBlocks blocks =
        new StepBlocks(
            files.stream()
                .filter(f -> f.folder().equals("steps") && f.name().endsWith(".yaml"))
                .toList(),
            circumstances,
            this::with);
    EntryReader entries = new EntryReader(scale, new StepReader(circumstances, blocks));
    FaultReader faultReader = new FaultReader(entries);
    List<Family> families = new ArrayList<>();
    List<Stop> stops = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    List<Check> checks = new ArrayList<>();
    List<Symptom> symptoms = new ArrayList<>();
    List<Trail> trails = new ArrayList<>();
    List<Walk> walks = new ArrayList<>();
    Map<String, Rate> rates = new LinkedHashMap<>();
    List<Synonyms> synonyms = new ArrayList<>();
    Map<String, String> retired = new LinkedHashMap<>();
    for (BaseText file : files) {
      String folder = file.folder();
      if (!file.name().endsWith(".yaml")) {
        continue;
      } else if (folder.startsWith("faults/")) {
        with(file, sink -> faultReader.read(file, sink)).ifPresent(faults::add);
      } else if (folder.equals("stops")) {
        with(file, sink -> StopReader.read(entries, faultReader, file, sink)).ifPresent(stops::add);
      } else if (folder.equals("checks")) {
        with(file, sink -> SmallReaders.check(entries, file, sink)).ifPresent(checks::add);
      } else if (folder.equals("trails")) {
        with(file, sink -> SmallReaders.trail(file, sink)).ifPresent(trails::add);
      } else if (folder.equals("walks")) {
        with(file, sink -> WalkReader.read(file, sink)).ifPresent(walks::add);
      } else if (folder.equals("families")) {
        with(file, sink -> SmallReaders.family(file, sink)).ifPresent(families::add);
        familyFiles.put(file.stem(), Position.ofFile(file.shownAs()));
      } else if (file.name().equals("symptoms.yaml")) {
        symptoms.addAll(with(file, SmallReaders::symptoms));
      } else if (file.name().equals("synonyms.yaml")) {
        synonyms.addAll(with(file, SmallReaders::synonyms));
      } else if (file.name().equals("rates.yaml")) {
        rates.putAll(with(file, SmallReaders::rates));
      } else if (file.name().equals(RETIRED)) {
        retired.putAll(with(file, SmallReaders::retired));
        retiredFile = Position.ofFile(file.shownAs());
      } else if (folder.equals("faults")) {
        problems.add(
            Problem.error(
                Position.ofFile(file.shownAs()),
                "fault outside of a stage's folder",
                "move it to faults/<stage>/"));
      }
    }
    Base base =
        new Base(
            scale,
            Families.compose(families, this::familyProblem),
            stops,
            faults,
            checks,
            symptoms,
            trails,
            walks,
            bySignId(faults, rates),
            synonyms,
            retired,
            circumstances,
            blocks.all());
    crossReferences(base);
    costs(base);
    return new Loaded(base, problems);
  }

  private <T> T with(BaseText file, Function<Sink, T> read) {
    Sink sink = new Sink(file);
    T result = read.apply(sink);
    // A file of nothing but errors has as many as lines; nobody reads them all.
    sink.problems().stream()
        .limit(Math.max(0, MOST_PROBLEMS - problems.size()))
        .forEach(problems::add);
    sink.mentions().forEach((name, at) -> mentions.put(at.file() + ' ' + name, at));
    if (sink.hasErrors()) {
      broken.add(file.stem());
    }
    return result;
  }

  /** Rates of signs that are there; a sign that took another's place keeps its rate. */
  private static Map<String, Rate> bySignId(List<Fault> faults, Map<String, Rate> rates) {
    Map<String, Rate> byId = new LinkedHashMap<>();
    for (Fault fault : faults) {
      for (Sign sign : fault.signs()) {
        Rate rate = rates.get(sign.id());
        if (rate != null) {
          byId.put(sign.id(), rate);
        }
      }
      fault
          .retired()
          .forEach(
              (was, now) -> {
                Rate rate = rates.get(fault.id() + "/" + was);
                if (rate != null && ids(fault).contains(fault.id() + "/" + now)) {
                  byId.putIfAbsent(fault.id() + "/" + now, rate);
                }
              });
    }
    return byId;
  }

  private static Set<String> ids(Fault fault) {
    return fault.signs().stream().map(Sign::id).collect(Collectors.toSet());
  }

  private void crossReferences(Base base) {
    Map<String, Position> faultIds = ids(base.faults(), Fault::id, Fault::where, "fault");
    for (Fault fault : base.faults()) {
      for (String alias : fault.aliases()) {
        if (faultIds.containsKey(alias)) {
          problem(fault.where(), "alias '" + alias + "' is the id of another fault", "");
        }
        faultIds.put(alias, fault.where());
      }
    }
    Map<String, Position> checkIds = ids(base.checks(), Check::id, Check::where, "check");
    Map<String, Position> symptomIds = ids(base.symptoms(), Symptom::id, Symptom::where, "symptom");
    ids(base.trails(), Trail::id, Trail::where, "false trail");
    Set<String> families = base.families().stream().map(Family::id).collect(Collectors.toSet());
    Map<String, Position> stopIds = ids(base.stops(), Stop::id, Stop::where, "stop");
    for (Stop stop : base.stops()) {
      refer(stop.where(), stop.families(), families, "family");
      refer(stop.where(), stop.general(), faultIds.keySet(), "fault");
      refer(stop.where(), stop.looks(), checkIds.keySet(), "check");
      milestones(base, stop.bearer());
    }
    for (Fault fault : base.faults()) {
      refer(fault.where(), fault.families(), families, "family");
      refer(fault.where(), fault.endsIn().keySet(), stopIds.keySet(), "stop");
      refer(fault.where(), fault.leadsTo(), faultIds.keySet(), "fault in leads-to");
      refer(fault.where(), fault.symptoms(), symptomIds.keySet(), "symptom");
      refer(fault.where(), fault.toldApartBy().keySet(), checkIds.keySet(), "check");
      answers(base, fault);
      milestones(base, fault);
    }
    for (Trail trail : base.trails()) {
      refer(trail.where(), trail.families(), families, "family");
      trail.only().forEach(p -> milestone(base, trail.families(), p.form(), p.where()));
    }
    ids(base.walks(), Walk::id, Walk::where, "walk");
    Set<String> fixIds =
        base.faults().stream()
            .flatMap(f -> f.fixes().stream())
            .map(Fix::id)
            .collect(Collectors.toSet());
    for (Map.Entry<String, String> each : base.retired().entrySet()) {
      if (fixIds.contains(each.getKey())) {
        problem(
            retiredFile,
            "retired id '" + each.getKey() + "' is in use",
            "a retired id is never used again");
      } else if (base.fix(each.getKey()).isEmpty() && !isOfBrokenFile(each.getValue(), "fix")) {
        problem(
            retiredFile,
            "'" + each.getKey() + "' leads to no fix: '" + each.getValue() + "'",
            Words.nearest(each.getValue(), fixIds)
                .map(n -> "did you mean '" + n + "'?")
                .orElse(""));
      }
    }
    for (Walk walk : base.walks()) {
      refer(walk.where(), walk.symptoms(), symptomIds.keySet(), "symptom");
      refer(walk.where(), walk.faults(), faultIds.keySet(), "fault");
      for (Walk.Step step : walk.steps()) {
        for (Walk.Answer answer : step.answers()) {
          if (answer.leads() == Walk.Leads.FAULT) {
            refer(answer.where(), List.of(answer.to()), faultIds.keySet(), "fault");
          } else if (answer.leads() == Walk.Leads.FIX) {
            refer(answer.where(), List.of(answer.to()), fixIds, "fix");
          }
        }
      }
    }
  }

  /**
   * What repeats costs at each character of each line that holds the pattern's literal; a base has
   * few patterns that repeat much.
   */
  private void costs(Base base) {
    int parts = 0;
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine form) {
          parts = cost(parts, form.line(), sign.where());
        }
      }
    }
    for (Trail trail : base.trails()) {
      for (Trail.TrailSign sign : trail.signs()) {
        parts = cost(parts, sign.line(), sign.where());
      }
    }
  }

  private int cost(int before, Pattern line, Position where) {
    int repeated = line.repeatedParts();
    if (repeated > 0 && before + repeated > MOST_REPEATED) {
      problem(
          where,
          "the signs up to this one repeat too much",
          "allowed in a base: "
              + MOST_REPEATED
              + " repetitions by counts such as {0,60}; use * where the number does not matter");
    }
    return before + repeated;
  }

  private void answers(Base base, Fault fault) {
    fault
        .toldApartBy()
        .forEach(
            (checkId, answers) ->
                base.check(checkId)
                    .ifPresent(
                        check ->
                            refer(
                                fault.where(),
                                answers.keySet(),
                                check.answers().stream().map(Check.Answer::id).toList(),
                                "answer of check " + checkId)));
  }

  private static Optional<String> milestone(SignForm form) {
    if (form instanceof SignForm.Without without) {
      return Optional.of(without.milestone());
    }
    return form instanceof SignForm.Reached reached
        ? Optional.of(reached.milestone())
        : Optional.empty();
  }

  private void milestones(Base base, Fault fault) {
    fault.signs().forEach(s -> milestone(base, fault.families(), s.form(), s.where()));
  }

  private void milestone(Base base, List<String> families, SignForm form, Position where) {
    milestone(form)
        .ifPresent(
            milestone -> {
              for (String familyId : families) {
                base.family(familyId)
                    .filter(family -> family.milestone(milestone).isEmpty())
                    .ifPresent(
                        family ->
                            problem(
                                where,
                                "unknown milestone '" + milestone + "' of family " + familyId,
                                Words.advice(
                                    milestone,
                                    family.milestones().stream().map(m -> m.id()).toList())));
              }
            });
  }

  private void familyProblem(Family in, String what, String name, String message, String advice) {
    Position file = familyFiles.getOrDefault(in.id(), Position.ofFile("families/" + in.id()));
    if (!isOfBrokenFile(name, what)) {
      problem(mentions.getOrDefault(file.file() + ' ' + what + ' ' + name, file), message, advice);
    }
  }

  private <T> Map<String, Position> ids(
      List<T> entries, Function<T, String> id, Function<T, Position> where, String what) {
    Map<String, Position> seen = new HashMap<>();
    for (T entry : entries) {
      Position first = seen.putIfAbsent(id.apply(entry), where.apply(entry));
      if (first != null) {
        problem(
            where.apply(entry),
            "second " + what + " with the id '" + id.apply(entry) + "'",
            "the first stands in " + first);
      }
    }
    return seen;
  }

  private void refer(
      Position where, Collection<String> found, Collection<String> known, String what) {
    for (String id : found) {
      if (!known.contains(id) && !isOfBrokenFile(id, what)) {
        problem(
            mentions.getOrDefault(where.file() + ' ' + what + ' ' + id, where),
            "unknown " + what + ": '" + id + "'",
            Words.nearest(id, known).map(n -> "did you mean '" + n + "'?").orElse(""));
      }
    }
  }

  /**
   * Whether the entry is only unknown because its own file has errors, which are reported already.
   * Entries have the names of their files; a repair begins with the name of its fault.
   */
  private boolean isOfBrokenFile(String id, String what) {
    return broken.contains(id.replaceFirst("/.*", ""))
        || (what.equals("symptom") && broken.contains("symptoms"));
  }

  private void problem(Position where, String message, String advice) {
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(Problem.error(where, message, advice));
    }
  }
}
