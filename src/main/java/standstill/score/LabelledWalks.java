package standstill.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntConsumer;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Label;
import standstill.guide.Guide;
import standstill.guide.Known;
import standstill.guide.Limits;
import standstill.guide.Step;
import standstill.rank.AnswerModel;
import standstill.rank.Beliefs;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;
import standstill.rank.SameRepairs;
import standstill.report.Diagnoser;
import standstill.report.Report;
import standstill.report.WhatIsKnown;

/**
 * People at machines whose fault is known: boots with a label, and a walk from their log beside the
 * plain list of repairs.
 *
 * <p>The log is a real one, so that the ranking errs as it does. What the person finds is drawn
 * from the tables of the labelled fault, with slips; a repair of a right fault cures with the
 * chance of its word, and so does the same repair under another name. Cured is who has a lasting
 * repair that helped. Both ways stop after {@link #MOST_REPAIRS} repairs or {@link Walks#PATIENCE}
 * minutes, and both meet the same luck.
 *
 * <p>Limit: answers and chances come out of the base's own words, only the logs don't.
 */
public final class LabelledWalks {
  /** Repairs that anybody tries. */
  public static final int MOST_REPAIRS = 12;

  private static final int MOST_STEPS = 60;

  /**
   * How the people of a source did on one way.
   *
   * @param source name of the source
   * @param guided whether by the walk; otherwise down the list
   * @param people how many
   * @param cured how many have a lasting repair
   * @param falseEndings how many were handed over although a repair of the true fault was left that
   *     they could have done
   * @param risky grave repairs that were done
   * @param riskyInVain those that were against a fault that was not there
   * @param minutes mean minutes spent
   * @param charged the same with {@link Walks#NOT_CURED} more for each who is not cured
   */
  public record Measure(
      String source,
      boolean guided,
      int people,
      int cured,
      int falseEndings,
      int risky,
      int riskyInVain,
      double minutes,
      double charged) {}

  private record Walk(
      boolean cured, boolean falseEnding, int risky, int riskyInVain, double minutes) {}

  private final Base base;
  private final Guide guide;
  private final Diagnoser diagnoser;
  private final AnswerModel answers;
  private final SameRepairs repairs;

  /** Walks through a base. */
  public LabelledWalks(Base base) {
    this.base = base;
    this.guide = new Guide(base);
    this.diagnoser = new Diagnoser(base);
    Beliefs beliefs = new Beliefs(base);
    this.answers = beliefs.answers();
    this.repairs = beliefs.repairs();
  }

  /**
   * Measures both ways on all boots of a fault that the base has.
   *
   * @param each people at every boot
   * @param progress is told how many boots are through
   */
  public List<Measure> measure(List<Source> sources, long seed, int each, IntConsumer progress) {
    Map<String, List<List<Walk>>> walks = new LinkedHashMap<>();
    Random seeds = new Random(seed);
    int done = 0;
    for (Source source : sources) {
      List<List<Walk>> both = List.of(new ArrayList<>(), new ArrayList<>());
      walks.put(source.name(), both);
      for (LabelledLog log : source.logs()) {
        long own = seeds.nextLong();
        Optional<Fault> fault =
            log.label().isFault() ? base.fault(log.label().label()) : Optional.empty();
        if (fault.isPresent()) {
          Report report = diagnoser.diagnose(diagnoser.read(log.bytes()), 0);
          Optional<Ranking> ranking = report.diagnosis().map(Report.Diagnosis::ranking);
          Known known = WhatIsKnown.of(base, Optional.of(report), List.of());
          for (int i = 0; i < each && ranking.isPresent(); i++) {
            long luck = own + i;
            both.get(0)
                .add(guided(new Someone(luck, fault.get(), log.label()), ranking.get(), known));
            both.get(1).add(listed(new Someone(luck, fault.get(), log.label()), ranking.get()));
          }
        }
        progress.accept(++done);
      }
    }
    List<Measure> measures = new ArrayList<>();
    walks.forEach(
        (source, both) -> {
          measures.add(measure(source, true, both.get(0)));
          measures.add(measure(source, false, both.get(1)));
        });
    return measures;
  }

  private static Measure measure(String source, boolean guided, List<Walk> walks) {
    int cured = (int) walks.stream().filter(Walk::cured).count();
    double minutes = walks.stream().mapToDouble(Walk::minutes).average().orElse(0);
    return new Measure(
        source,
        guided,
        walks.size(),
        cured,
        (int) walks.stream().filter(Walk::falseEnding).count(),
        walks.stream().mapToInt(Walk::risky).sum(),
        walks.stream().mapToInt(Walk::riskyInVain).sum(),
        minutes,
        minutes + Walks.NOT_CURED * (walks.size() - cured) / Math.max(1, walks.size()));
  }

  /** A person at a machine, and what came of it so far. */
  private final class Someone {
    private final long seed;
    private final Fault fault;
    private final Label label;
    private Observations said = Observations.NONE;
    private double minutes;
    private int tried;
    private int risky;
    private int riskyInVain;
    private boolean cured;

    Someone(long seed, Fault fault, Label label) {
      this.seed = seed;
      this.fault = fault;
      this.label = label;
    }

    boolean goesOn() {
      return !cured && minutes < Walks.PATIENCE && tried < MOST_REPAIRS;
    }

    void look(Check check) {
      minutes += check.minutes();
      said = said.answer(check.id(), Person.answer(check, fault, answers, random(check.id())));
    }

    /** The repair of a right fault that a repair is, or is the same as. */
    private Optional<Fix> right(Fix fix) {
      return base.faults().stream()
          .filter(f -> label.accepts(f.id()))
          .flatMap(f -> f.fixes().stream())
          .filter(own -> repairs.same(own.id(), fix.id()))
          .max(Comparator.comparingDouble(own -> own.cures().value()));
    }

    void repair(Fix fix) {
      minutes += fix.minutes() + Guide.TRY_OUT;
      tried++;
      Optional<Fix> right = right(fix);
      if (fix.isGrave()) {
        risky++;
        riskyInVain += right.isEmpty() ? 1 : 0;
      }
      boolean helps =
          right.filter(own -> random(own.id()).nextDouble() < own.cures().value()).isPresent();
      cured = helps && fix.scope().lasting();
      said = helps ? said.helpedOnce(fix.id()) : said.didNotHelp(fix.id());
    }

    private boolean isDone(Fix fix) {
      return repairs.isAmong(fix.id(), said.tried()) || repairs.isAmong(fix.id(), said.helped());
    }

    /** Whether a repair of the labelled fault is left that holds. */
    private boolean hasLeft() {
      return fault.fixes().stream().anyMatch(fix -> fix.scope().lasting() && !isDone(fix));
    }

    private Random random(String what) {
      Random random = new Random(seed * 0x9E3779B97F4A7C15L + what.hashCode());
      random.nextLong();
      return random;
    }

    Walk walk(boolean handedOver) {
      return new Walk(cured, !cured && handedOver && hasLeft(), risky, riskyInVain, minutes);
    }
  }

  private Walk guided(Someone someone, Ranking start, Known known) {
    Limits limits = Limits.none(true).knowing(known);
    for (int i = 0; i < MOST_STEPS && someone.goesOn(); i++) {
      Step step = guide.guide(start, someone.said, limits).step();
      if (step instanceof Step.Ask ask) {
        someone.look(ask.check());
      } else if (step instanceof Step.Repair repair) {
        someone.repair(repair.fix());
      } else if (step instanceof Step.HandOver over) {
        Optional<Step.Left> choice = choice(over.left());
        if (choice.isEmpty()) {
          return someone.walk(true);
        }
        limits = Limits.none(true).knowing(known).choose(choice.get().fix().id());
        Step chosen = guide.guide(start, someone.said, limits).step();
        limits = Limits.none(true).knowing(known);
        someone.repair(chosen instanceof Step.Repair repair ? repair.fix() : choice.get().fix());
      }
    }
    return someone.walk(false);
  }

  /**
   * What a careful person takes of what is left: the harmless first, best chance for its minutes.
   */
  private static Optional<Step.Left> choice(List<Step.Left> left) {
    return left.stream()
        .min(
            Comparator.comparing((Step.Left each) -> each.fix().isGrave())
                .thenComparing(each -> -each.chance() / (each.fix().minutes() + Guide.TRY_OUT)));
  }

  private Walk listed(Someone someone, Ranking start) {
    for (Cause cause : start.causes()) {
      for (Fix fix : cause.fault().fixes()) {
        if (!someone.goesOn()) {
          return someone.walk(false);
        }
        if (!someone.isDone(fix)) {
          someone.repair(fix);
        }
      }
    }
    return someone.walk(false);
  }
}
