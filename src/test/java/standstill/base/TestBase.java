package standstill.base;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import standstill.text.Pattern;
import standstill.text.Position;

/** Builds small bases for tests. All entries are invented. */
public final class TestBase {
  private static final Reviewed REVIEWED = new Reviewed(LocalDate.EPOCH, "test");
  private final List<Fault> faults = new ArrayList<>();
  private final List<Check> checks = new ArrayList<>();
  private final Map<String, Double> model = new LinkedHashMap<>();
  private final List<Milestone> milestones = new ArrayList<>();
  private final List<Walk> walks = new ArrayList<>();
  private final List<Symptom> symptoms = new ArrayList<>();
  private final List<Stop> stops = new ArrayList<>();

  /** A base without faults, whose model takes nothing off the textbook's arithmetic. */
  public TestBase() {
    model.put("unlisted-share", 0.0);
    model.put("no-stall-share", 0.0);
    model.put("leads-to", 0.8);
    model.put("stage-miss", 0.1);
    model.put("passed-by", 0.35);
    model.put("temperature", 1.0);
    model.put("absence-floor", 0.01);
    model.put("no-own-sign", 0.1);
    model.put("prior-boots", 40.0);
    model.put("dependence", 0.0);
    model.put("general-share", 0.6);
    model.put("unlisted-weight", 1.0);
    model.put("rivals-trust", 1.0);
    model.put("coarse-share", 1.0);
    model.put("stop-by-stage", 0.03);
    model.put("stop-elsewhere", 0.003);
    model.put("coarse-link", 0.8);
    model.put("faintest-link", 0.2);
    model.put("least-stage-fit", 0.004);
    model.put("end-lines", 1000000000.0);
    model.put("stop-unseen", 1.0);
    model.put("read-out", 1.0);
    model.put("ended-well", 1.0);
    model.put("trouble-last", 1.0);
    model.put("trouble-done", 1.0);
    model.put("stop-temperature", 1.0);
    model.put("pull", 1.0);
    model.put("least-absence", 1e-09);
    model.put("absence-beside", 1.0);
    model.put("rival-boots", 40.0);
    model.put("stepping-back", 0.15);
    model.put("decisive", 0.01);
    model.put("telling", 5.0);
    model.put("left-over", 1.0);
    model.put("slips", 0.04);
    model.put("stage-misnamed", 0.05);
    model.put("stage-unlisted", 0.3);
    model.put("symptom-shown", 0.5);
    model.put("symptom-elsewhere", 0.1);
  }

  /** Sets a number of the model. */
  public TestBase model(String name, double value) {
    model.put(name, value);
    return this;
  }

  /** Adds a milestone. */
  public TestBase milestone(String id, Stage stage, Milestone.Proves proves, String line) {
    milestones.add(new Milestone(id, stage, proves, id, Pattern.known(line), List.of(line)));
    return this;
  }

  /** Adds a fault. */
  public FaultBuilder fault(String id, double weight) {
    return new FaultBuilder(id, weight);
  }

  /** Adds a walk of one question that ends in a fault or is handed over, offered at a symptom. */
  public TestBase walk(String id, String symptom, String fault) {
    Position where = Position.ofFile("test");
    symptoms.add(
        new Symptom(symptom, symptom, List.of(Stage.FIRMWARE), "look", List.of(), REVIEWED, where));
    walks.add(
        new Walk(
            id,
            id,
            id,
            List.of(symptom),
            List.of(),
            List.of(),
            List.of(
                new Walk.Step(
                    "look",
                    "look?",
                    List.of("look"),
                    1,
                    Risk.NONE,
                    List.of(),
                    List.of(
                        new Walk.Answer("yes", "yes", Walk.Leads.FAULT, fault, where),
                        new Walk.Answer("no", "no", Walk.Leads.HAND_OVER, "ask", where)),
                    where)),
            List.of(),
            REVIEWED,
            where));
    return this;
  }

  /** Adds what a boot ends in, with the checks that help there. */
  public TestBase stop(String id, String... looks) {
    stops.add(
        new Stop(
            id,
            id,
            List.of("linux"),
            Set.of(Stage.KERNEL),
            new Fault.Frequency("test", 1),
            id,
            false,
            chance(0.1),
            List.of(),
            List.of(),
            List.of(looks),
            List.of(),
            REVIEWED,
            List.of(),
            Position.ofFile("test")));
    return this;
  }

  /** Adds a check with answers that are equally likely otherwise. */
  public TestBase check(String id, int minutes, String... answers) {
    List<Check.Answer> all = new ArrayList<>();
    for (String answer : answers) {
      all.add(new Check.Answer(answer, answer, chance(1.0 / answers.length)));
    }
    checks.add(
        new Check(
            id,
            id + "?",
            List.of("look"),
            minutes,
            Risk.NONE,
            List.of(),
            List.of(),
            List.of(),
            all,
            List.of(),
            REVIEWED,
            Position.ofFile("test")));
    return this;
  }

  /** A chance without a word. */
  public static Chance chance(double value) {
    return new Chance("test", value);
  }

  /** The family that all faults belong to. */
  public Family family() {
    return family(milestones, Facts.NONE);
  }

  /** A family with these milestones and facts, and nothing else. */
  public static Family family(List<Milestone> milestones, Facts facts) {
    return new Family(
        "linux",
        "Linux",
        List.of(),
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        milestones,
        facts,
        Marks.NONE);
  }

  /** The base. */
  public Base build() {
    Map<Risk, Double> risks = new LinkedHashMap<>();
    for (Risk risk : Risk.values()) {
      risks.put(risk, risk == Risk.NONE ? 0.0 : 10.0 * risk.ordinal());
    }
    Scale scale = new Scale(Map.of(), Map.of(), Map.of(), Map.of(), risks, 5, model);
    return new Base(
        scale,
        List.of(family()),
        stops,
        faults,
        checks,
        symptoms,
        List.of(),
        walks,
        Map.of(),
        List.of(),
        Map.of(),
        List.of(),
        List.of());
  }

  /** Builds one fault. */
  public final class FaultBuilder {
    private final String id;
    private final double weight;
    private boolean general;
    private Stage stage = Stage.KERNEL;
    private Set<Stage> stopsIn = Set.of();
    private String part;
    private final List<Sign> signs = new ArrayList<>();
    private List<String> leadsTo = List.of();
    private final Map<String, Chance> endsIn = new LinkedHashMap<>();
    private final Map<String, Map<String, Chance>> toldApartBy = new LinkedHashMap<>();
    private final List<Fix> fixes = new ArrayList<>();

    private FaultBuilder(String id, double weight) {
      this.id = id;
      this.weight = weight;
      this.part = id;
    }

    /** Marks it as general. */
    public FaultBuilder general() {
      general = true;
      return this;
    }

    /** Sets its stage and, if given, the stages that it stops boots in. */
    public FaultBuilder stage(Stage stage, Stage... stopsIn) {
      this.stage = stage;
      this.stopsIn = Set.of(stopsIn);
      return this;
    }

    /** Sets its part of the machine. */
    public FaultBuilder part(String part) {
      this.part = part;
      return this;
    }

    /** Adds a sign that is an event of its own. */
    public FaultBuilder sign(String line, double shows, double elsewhere) {
      return sign(line, shows, elsewhere, id + "/" + (signs.size() + 1));
    }

    /** Adds a sign of an event. */
    public FaultBuilder sign(String line, double shows, double elsewhere, String event) {
      return sign(new SignForm.OnLine(Pattern.known(line), 0, 1, 0), shows, elsewhere, event, "");
    }

    /** Adds a sign of any form. */
    public FaultBuilder sign(
        SignForm form, double shows, double elsewhere, String event, String says) {
      signs.add(
          new Sign(
              id + "/" + (signs.size() + 1),
              form,
              chance(shows),
              chance(elsewhere),
              chance(elsewhere),
              event,
              says,
              List.of(),
              List.of(),
              Optional.empty(),
              Span.ALWAYS,
              Position.ofFile("test")));
      return this;
    }

    /** Names its consequences. */
    public FaultBuilder leadsTo(String... ids) {
      leadsTo = List.of(ids);
      return this;
    }

    /** Says how likely an answer to a check is. */
    public FaultBuilder answer(String check, String answer, double chance) {
      toldApartBy.computeIfAbsent(check, k -> new LinkedHashMap<>()).put(answer, chance(chance));
      return this;
    }

    /** Adds a fix. */
    public FaultBuilder fix(String title, int minutes, double cures, Risk risk) {
      fixes.add(
          new Fix(
              id + "/fix/" + (fixes.size() + 1),
              title,
              List.of(FixStep.of(title)),
              minutes,
              chance(cures),
              risk,
              List.of(),
              "it works",
              "put it back",
              List.of(),
              Fix.Scope.ANYWHERE));
      return this;
    }

    /** Forces the last fix to come after another one of this fault, by its number from 1. */
    public FaultBuilder after(int number) {
      Fix.Scope scope = last().scope();
      return scope(scope.lasting(), Optional.of(id + "/fix/" + number), scope.when());
    }

    /** Lets the last fix hold for one boot only. */
    public FaultBuilder forOneBoot() {
      return scope(false, last().scope().first(), last().scope().when());
    }

    /** Sets what has to be so for the last fix to make sense. */
    public FaultBuilder when(String... conditions) {
      return scope(
          last().scope().lasting(),
          last().scope().first(),
          Stream.of(conditions).map(Condition::of).toList());
    }

    private Fix last() {
      return fixes.get(fixes.size() - 1);
    }

    private FaultBuilder scope(boolean lasting, Optional<String> first, List<Condition> when) {
      Fix last = fixes.remove(fixes.size() - 1);
      fixes.add(
          new Fix(
              last.id(),
              last.title(),
              last.steps(),
              last.minutes(),
              last.cures(),
              last.risk(),
              last.needs(),
              last.prove(),
              last.undo(),
              last.cautions(),
              new Fix.Scope(lasting, first, when, Span.ALWAYS, Map.of())));
      return this;
    }

    /** Names a stop in which boots with this fault end. */
    public FaultBuilder endsIn(String stop, double chance) {
      endsIn.put(stop, chance(chance));
      return this;
    }

    /** Adds the fault to the base. */
    public TestBase add() {
      faults.add(
          new Fault(
              id,
              id,
              general,
              List.of("linux"),
              stage,
              stopsIn.isEmpty() ? Set.of(stage) : stopsIn,
              part,
              new Fault.Frequency("test", weight),
              id,
              List.of(),
              signs,
              leadsTo,
              endsIn,
              toldApartBy,
              fixes,
              "",
              List.of(),
              REVIEWED,
              List.of(),
              Map.of(),
              Position.ofFile("test")));
      return TestBase.this;
    }
  }
}
