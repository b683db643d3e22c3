package standstill.guide;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fix;
import standstill.base.Stage;
import standstill.rank.Observations;

/**
 * The course of a walk: all that a person has said and done, in order. Immutable. It is the whole
 * state of a walk; {@link Guide} computes the rest from it each time, so that going back restores
 * exactly what was there.
 *
 * @param stage where the person sees the boot stop
 * @param sees ids of symptoms
 * @param lacks ids of things that the person does not have
 * @param before ids of fixes that were tried before the walk and did not help
 * @param turns what was said to each step, in order; at most one for each step
 */
public record Course(
    Optional<Stage> stage,
    Set<String> sees,
    Set<String> lacks,
    Set<String> before,
    List<Turn> turns) {
  /** Most turns that are taken; far more than a base has sensible steps for one boot. */
  public static final int MOST_TURNS = 100;

  /** The reply of somebody who does not want to do a step. */
  public static final String SKIP = "skip";

  /** A repair helped. */
  public static final String HELPED = "helped";

  /** A repair did not help. */
  public static final String NO_HELP = "no-help";

  /** A repair that was not proposed is wanted all the same. */
  public static final String TRY = "try";

  /** A walk written by hand came to no cause. */
  public static final String NO_CAUSE = "no-cause";

  /** A walk that has not begun. */
  public static final Course NEW =
      new Course(Optional.empty(), Set.of(), Set.of(), Set.of(), List.of());

  public Course {
    sees = ordered(sees);
    lacks = ordered(lacks);
    before = ordered(before);
    turns = List.copyOf(turns);
  }

  private static final Set<String> NOT_FOUND = Set.of(NO_CAUSE, SKIP);

  private static Set<String> ordered(Set<String> set) {
    return Collections.unmodifiableSet(new LinkedHashSet<>(set));
  }

  /** What a turn replies to. */
  public enum Kind {
    /** A check; the reply is an answer's id, {@link Observations#UNKNOWN} or {@link #SKIP}. */
    CHECK,
    /** A fix; the reply is {@link #HELPED}, {@link #NO_HELP}, {@link #SKIP} or {@link #TRY}. */
    FIX,
    /**
     * A walk written by hand; the reply is the id of the fault that it ended in, {@link #NO_CAUSE}
     * or {@link #SKIP}.
     */
    WALK,
    /** The advice to get a log; the reply is {@link #SKIP}. */
    LOG
  }

  /**
   * A reply to a step.
   *
   * @param kind what kind of step
   * @param id the check or fix; {@code log} for the advice to get one
   * @param reply see {@link Kind}
   */
  public record Turn(Kind kind, String id, String reply) {}

  /** With a reply; an earlier one to the same step is replaced at its place. */
  public Course reply(Turn turn) {
    List<Turn> more = new ArrayList<>(turns);
    for (int i = 0; i < more.size(); i++) {
      if (more.get(i).id().equals(turn.id())) {
        more.set(i, turn);
        return with(more);
      }
    }
    more.add(turn);
    return with(more);
  }

  /** Without the reply to a step. */
  public Course takeBack(String id) {
    return with(turns.stream().filter(t -> !t.id().equals(id)).toList());
  }

  /** Without the last reply. */
  public Course back() {
    return turns.isEmpty() ? this : with(turns.subList(0, turns.size() - 1));
  }

  private Course with(List<Turn> others) {
    return new Course(stage, sees, lacks, before, others);
  }

  /** With another stage. */
  public Course at(Optional<Stage> seen) {
    return new Course(seen, sees, lacks, before, turns);
  }

  /** With other symptoms. */
  public Course seeing(Set<String> symptoms) {
    return new Course(stage, symptoms, lacks, before, turns);
  }

  /** With one more thing that is lacking. */
  public Course lacking(String need) {
    Set<String> more = new LinkedHashSet<>(lacks);
    more.add(need);
    return new Course(stage, sees, more, before, turns);
  }

  /** With other fixes that were tried before. */
  public Course triedBefore(Set<String> fixes) {
    return new Course(stage, sees, lacks, fixes, turns);
  }

  /**
   * With the ids that fixes have today, where the walk names them by former ones. Two that became
   * one keep the later reply.
   */
  public Course renewed(Base base) {
    Set<String> tried = new LinkedHashSet<>();
    before.forEach(id -> tried.add(base.fix(id).map(Fix::id).orElse(id)));
    Course renewed = new Course(stage, sees, lacks, tried, List.of());
    for (Turn turn : turns) {
      renewed =
          renewed.reply(
              turn.kind() == Kind.FIX
                  ? new Turn(
                      turn.kind(), base.fix(turn.id()).map(Fix::id).orElse(turn.id()), turn.reply())
                  : turn);
    }
    return renewed;
  }

  /** The lasting fix that helped, if one did. */
  public Optional<String> cured(Base base) {
    return helped().stream().filter(id -> lasts(base, id)).findFirst();
  }

  /** Fixes that helped for one boot only. */
  public List<String> temporary(Base base) {
    return helped().stream().filter(id -> !lasts(base, id)).toList();
  }

  /** Checks to which the person did not know the answer. */
  public List<String> unknown() {
    return with(Kind.CHECK, Observations.UNKNOWN);
  }

  /** Fixes that were tried, before or in the walk, and did not help. */
  public List<String> tried() {
    List<String> tried = new ArrayList<>(before);
    tried.addAll(with(Kind.FIX, NO_HELP));
    return tried;
  }

  private List<String> helped() {
    return with(Kind.FIX, HELPED);
  }

  private List<String> with(Kind kind, String reply) {
    return turns.stream()
        .filter(t -> t.kind() == kind && t.reply().equals(reply))
        .map(Turn::id)
        .toList();
  }

  private static boolean lasts(Base base, String fix) {
    return base.fix(fix).map(f -> f.scope().lasting()).orElse(true);
  }

  /** What was said, for the ranking. */
  public Observations observations() {
    Observations said = new Observations(stage, sees, java.util.Map.of(), before);
    for (Turn turn : turns) {
      if (turn.kind() == Kind.CHECK && !turn.reply().equals(SKIP)) {
        said = said.answer(turn.id(), turn.reply());
      } else if (turn.kind() == Kind.FIX && turn.reply().equals(NO_HELP)) {
        said = said.didNotHelp(turn.id());
      } else if (turn.kind() == Kind.FIX && turn.reply().equals(HELPED)) {
        said = said.helpedOnce(turn.id());
      } else if (turn.kind() == Kind.WALK && !NOT_FOUND.contains(turn.reply())) {
        said = said.found(turn.reply());
      }
    }
    return said;
  }

  /**
   * What is not to be proposed.
   *
   * @param log whether a log was read
   */
  public Limits limits(boolean log) {
    Set<String> skipped = new LinkedHashSet<>();
    Set<String> chosen = new LinkedHashSet<>();
    Set<String> walked = new LinkedHashSet<>();
    boolean noLog = false;
    for (Turn turn : turns) {
      if (turn.kind() == Kind.LOG) {
        noLog = true;
      } else if (turn.kind() == Kind.WALK) {
        walked.add(turn.id());
      } else if (turn.reply().equals(TRY)) {
        chosen.add(turn.id());
      } else if (turn.reply().equals(SKIP)) {
        skipped.add(turn.id());
      }
    }
    return new Limits(lacks, skipped, chosen, walked, log || noLog, Known.NOTHING);
  }

  /** What does not fit the base, as sentences; empty when everything does. */
  public List<String> problems(Base base) {
    List<String> problems = new ArrayList<>();
    for (String symptom : sees) {
      if (base.symptom(symptom).isEmpty()) {
        problems.add("the base has no symptom '" + symptom + "'");
      }
    }
    for (String need : lacks) {
      if (!base.scale().needs().containsKey(need)) {
        problems.add("no step needs '" + need + "'");
      }
    }
    for (String fix : before) {
      if (base.fix(fix).isEmpty()) {
        problems.add("the base has no fix '" + fix + "'");
      }
    }
    if (turns.size() > MOST_TURNS) {
      problems.add("a walk has at most " + MOST_TURNS + " replies");
    }
    Set<String> replied = new LinkedHashSet<>();
    for (Turn turn : turns) {
      if (!replied.add(turn.id())) {
        problems.add("'" + turn.id() + "' is replied to twice");
      }
      String problem = problem(base, turn);
      if (!problem.isEmpty()) {
        problems.add(problem);
      }
    }
    return problems;
  }

  private static String problem(Base base, Turn turn) {
    switch (turn.kind()) {
      case CHECK -> {
        Optional<Check> check = base.check(turn.id());
        if (check.isEmpty()) {
          return "the base has no check '" + turn.id() + "'";
        }
        return turn.reply().equals(SKIP)
                || turn.reply().equals(Observations.UNKNOWN)
                || check.get().answer(turn.reply()).isPresent()
            ? ""
            : "'" + turn.reply() + "' is no answer to '" + turn.id() + "'";
      }
      case FIX -> {
        if (base.fix(turn.id()).isEmpty()) {
          return "the base has no fix '" + turn.id() + "'";
        }
        return List.of(HELPED, NO_HELP, SKIP, TRY).contains(turn.reply())
            ? ""
            : "'" + turn.reply() + "' is no reply to a fix";
      }
      case WALK -> {
        if (base.walk(turn.id()).isEmpty()) {
          return "the base has no walk '" + turn.id() + "'";
        }
        return NOT_FOUND.contains(turn.reply()) || base.fault(turn.reply()).isPresent()
            ? ""
            : "'" + turn.reply() + "' is no end of '" + turn.id() + "'";
      }
      default -> {
        return turn.reply().equals(SKIP) ? "" : "'" + turn.reply() + "' is no reply to a log";
      }
    }
  }
}
