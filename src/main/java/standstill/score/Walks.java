package standstill.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.IntConsumer;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.guide.Guide;
import standstill.guide.Limits;
import standstill.guide.Step;
import standstill.rank.Beliefs;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranker;
import standstill.rank.Ranking;

/**
 * Simulated people on the way to the cure: the guide against three plain ways of searching.
 *
 * <p>Everybody starts from the same ranking and re-ranks by what is found. A search ends with the
 * cure, when there is nothing left to do, or when {@link #PATIENCE} minutes are spent; who is not
 * cured is charged {@link #NOT_CURED} minutes more, for somebody else's time. Minutes are those of
 * the steps and of trying a repair out, without what a risk is reckoned at.
 *
 * <p>Limit: people and machines are drawn from the base's own words, so the figures compare ways of
 * searching and don't promise minutes at a real bench.
 */
public final class Walks {
  /** Minutes after which a person stops searching. */
  public static final double PATIENCE = 240;

  /** Minutes that are charged to who is not cured: as much again as the patience. */
  public static final double NOT_CURED = 240;

  /** Causes from the top of the list that the plain ways take their checks from. */
  private static final int LOOKED_AT = 10;

  private static final int MOST_STEPS = 200;

  /** Where a person starts. */
  public enum Start {
    /** With a log that was read. */
    LOG("with a log"),
    /** By what is seen on the screen; a log can be had when it is asked for. */
    LOG_ON_REQUEST("no log yet"),
    /** By what is seen on the screen, and a log can't be had. */
    NO_LOG("no log to be had");

    private final String title;

    Start(String title) {
      this.title = title;
    }

    /** For people. */
    public String title() {
      return title;
    }
  }

  /** A way of searching. */
  public enum Way {
    /** The guide. */
    GUIDE("the guide"),
    /** Repairs of the likeliest cause, then of the next. */
    LIST("top of the list downwards"),
    /** The checks that belong to the first causes, in the base's order, then the list. */
    CHECKS("checks in fixed order, then the list"),
    /** Any check or repair that belongs to the first causes. */
    RANDOM("random");

    private final String title;

    Way(String title) {
      this.title = title;
    }

    /** For people. */
    public String title() {
      return title;
    }
  }

  /**
   * How a way of searching did.
   *
   * @param start where people started
   * @param way how they searched
   * @param people how many
   * @param minutes mean, with what giving up is charged
   * @param minutes90 90th percentile
   * @param steps mean number of checks and repairs
   * @param cured share of people
   * @param needless share of all steps that were risky repairs of a fault that wasn't there
   */
  public record Measure(
      Start start,
      Way way,
      int people,
      double minutes,
      double minutes90,
      double steps,
      double cured,
      double needless) {}

  /** One search. */
  private record Walk(double minutes, int steps, boolean cured, int needless) {}

  private final Base base;
  private final String family;
  private final Beliefs beliefs;
  private final Ranker ranker;
  private final Guide guide;

  /** Walks over the faults of a family. */
  public Walks(Base base, String family) {
    this.base = base;
    this.family = family;
    this.beliefs = new Beliefs(base);
    this.ranker = new Ranker(base);
    this.guide = new Guide(base);
  }

  /**
   * Measures all ways of searching.
   *
   * @param progress is told how many people are through
   */
  public List<Measure> measure(long seed, int people, IntConsumer progress) {
    List<List<Walk>> walks = new ArrayList<>();
    int kinds = Start.values().length * Way.values().length;
    for (int i = 0; i < kinds; i++) {
      walks.add(new ArrayList<>());
    }
    Random seeds = new Random(seed);
    for (int p = 0; p < people; p++) {
      Person person = new Person(seeds.nextLong(), base, family, beliefs, ranker);
      for (Start start : Start.values()) {
        for (Way way : Way.values()) {
          walks
              .get(start.ordinal() * Way.values().length + way.ordinal())
              .add(new Search(person, start).walk(way));
        }
      }
      progress.accept(p + 1);
    }
    List<Measure> measures = new ArrayList<>();
    for (Start start : Start.values()) {
      for (Way way : Way.values()) {
        measures.add(
            measure(start, way, walks.get(start.ordinal() * Way.values().length + way.ordinal())));
      }
    }
    return measures;
  }

  private static Measure measure(Start start, Way way, List<Walk> walks) {
    double[] minutes = walks.stream().mapToDouble(Walk::minutes).sorted().toArray();
    double steps = walks.stream().mapToInt(Walk::steps).sum();
    return new Measure(
        start,
        way,
        walks.size(),
        Arrays.stream(minutes).average().orElse(0),
        minutes.length == 0 ? 0 : minutes[(int) Math.ceil(0.9 * minutes.length) - 1],
        steps / Math.max(1, walks.size()),
        walks.stream().filter(Walk::cured).count() / (double) Math.max(1, walks.size()),
        walks.stream().mapToInt(Walk::needless).sum() / Math.max(1, steps));
  }

  /** Minutes of the guide over those of the best of the other ways. */
  public static double ratio(List<Measure> measures, Start start) {
    double guide = Double.NaN;
    double best = Double.POSITIVE_INFINITY;
    for (Measure each : measures) {
      if (each.start() == start && each.way() == Way.GUIDE) {
        guide = each.minutes();
      } else if (each.start() == start) {
        best = Math.min(best, each.minutes());
      }
    }
    return guide / best;
  }

  /** One person's search, under way. */
  private final class Search {
    private final Person person;
    private final Random luck;
    private Ranking start;
    private boolean hasLog;
    private Observations said = Observations.NONE;
    private double minutes;
    private int steps;
    private int needless;
    private boolean cured;

    private Search(Person person, Start from) {
      this.person = person;
      this.luck = person.random("order");
      this.hasLog = from != Start.LOG_ON_REQUEST;
      this.start = from == Start.LOG ? person.byLog().orElse(person.byLook()) : person.byLook();
    }

    private Walk walk(Way way) {
      while (!cured && minutes < PATIENCE && steps < MOST_STEPS && step(way)) {
        steps++;
      }
      steps += cured ? 1 : 0;
      return new Walk(cured ? minutes : minutes + NOT_CURED, steps, cured, needless);
    }

    /** Does one step; false when there is none left, or when it was the cure. */
    private boolean step(Way way) {
      return switch (way) {
        case GUIDE -> guided();
        case LIST -> repairNext();
        case CHECKS -> {
          List<Check> open = openChecks();
          yield open.isEmpty() ? repairNext() : ask(open.get(0));
        }
        case RANDOM -> any();
      };
    }

    private boolean guided() {
      Step step = guide.guide(start, said, Limits.none(hasLog)).step();
      if (step instanceof Step.Ask ask) {
        return ask(ask.check());
      }
      if (step instanceof Step.Repair repair) {
        return repair(repair.fault(), repair.fix());
      }
      if (step instanceof Step.GetLog) {
        minutes += Guide.LOG_MINUTES;
        hasLog = true;
        start = person.getsLog() ? person.byLog().orElse(start) : start;
        return true;
      }
      return false;
    }

    private boolean ask(Check check) {
      minutes += check.minutes();
      said = said.answer(check.id(), person.answer(check));
      return true;
    }

    private boolean repair(Fault fault, Fix fix) {
      minutes += fix.minutes() + Guide.TRY_OUT;
      if (fix.isGrave() && !person.has(fault)) {
        needless++;
      }
      cured = person.isCuredBy(fix);
      said = said.didNotHelp(fix.id());
      return !cured;
    }

    /** The next repair of the likeliest cause that has one left. */
    private boolean repairNext() {
      for (Cause cause : now().causes()) {
        Optional<Fix> next =
            cause.fault().fixes().stream().filter(f -> !said.tried().contains(f.id())).findFirst();
        if (next.isPresent()) {
          return repair(cause.fault(), next.get());
        }
      }
      return false;
    }

    /** The ranking after the answers; a repair that failed doesn't move its cause down the list. */
    private Ranking now() {
      return beliefs.update(
          start, new Observations(Optional.empty(), Set.of(), said.answers(), Set.of()));
    }

    private List<Check> openChecks() {
      Set<String> named = new LinkedHashSet<>();
      start.causes().stream()
          .limit(LOOKED_AT)
          .forEach(cause -> named.addAll(cause.fault().toldApartBy().keySet()));
      return base.checks().stream()
          .filter(c -> named.contains(c.id()) && !said.answers().containsKey(c.id()))
          .toList();
    }

    private boolean any() {
      List<Check> checks = openChecks();
      List<Cause> causes = now().causes().stream().limit(LOOKED_AT).toList();
      List<Fault> faults = new ArrayList<>();
      List<Fix> fixes = new ArrayList<>();
      for (Cause cause : causes) {
        for (Fix fix : cause.fault().fixes()) {
          if (!said.tried().contains(fix.id())) {
            faults.add(cause.fault());
            fixes.add(fix);
          }
        }
      }
      if (checks.isEmpty() && fixes.isEmpty()) {
        return false;
      }
      int chosen = luck.nextInt(checks.size() + fixes.size());
      return chosen < checks.size()
          ? ask(checks.get(chosen))
          : repair(faults.get(chosen - checks.size()), fixes.get(chosen - checks.size()));
    }
  }
}
