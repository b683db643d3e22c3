package standstill.base;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.text.Pattern;
import standstill.text.Position;

/** Builds small bases for tests. All entries are invented. */
public final class TestBase {
  private static final Reviewed REVIEWED = new Reviewed(LocalDate.EPOCH, "test");
  private final List<Fault> faults = new ArrayList<>();
  private final List<Check> checks = new ArrayList<>();
  private final Map<String, Double> model = new LinkedHashMap<>();
  private final List<Milestone> milestones = new ArrayList<>();

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
    model.put("left-over", 1.0);
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
        Facts.NONE);
  }

  /** The base. */
  public Base build() {
    Map<Risk, Double> risks = new LinkedHashMap<>();
    for (Risk risk : Risk.values()) {
      risks.put(risk, risk == Risk.NONE ? 0.0 : 10.0 * risk.ordinal());
    }
    Scale scale = new Scale(Map.of(), Map.of(), Map.of(), Map.of(), risks, 5, model);
    return new Base(scale, List.of(family()), faults, checks, List.of(), List.of(), Map.of());
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
      Fix last = fixes.remove(fixes.size() - 1);
      Fix.Scope any = Fix.Scope.ANYWHERE;
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
              new Fix.Scope(
                  any.lasting(),
                  Optional.of(id + "/fix/" + number),
                  any.when(),
                  any.span(),
                  any.values())));
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
              Map.of(),
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
