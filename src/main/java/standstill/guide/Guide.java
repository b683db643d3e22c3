package standstill.guide;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Risk;
import standstill.base.Sign;
import standstill.base.Stage;
import standstill.base.Walk;
import standstill.rank.AnswerModel;
import standstill.rank.Beliefs;
import standstill.rank.Cause;
import standstill.rank.Observations;
import standstill.rank.Ranking;

/**
 * Chooses the next step by decision theory.
 *
 * <p>One fault is present. Repairs are ordered by probability of cure over cost; a question is
 * asked first where the plan that begins with it is expected to cost less ({@link Troubleshooting},
 * two steps of look-ahead, three where little is left). Cost is minutes, plus what the scale
 * charges for a risk and for each thing needed. Two rules stand above the arithmetic: a repair that
 * can lose data, writes firmware or opens the case is never the first step while a harmless one or
 * a question is left, and what a person lacks or has skipped is not proposed.
 *
 * <p>A repair that helped for one boot is followed by a lasting one. Where nothing more would be
 * proposed, what is left is shown with its risk, and the person chooses ({@link Left}).
 *
 * <p>Where the base forces an order, the earlier repair is proposed in place of the later one, and
 * its minutes are added to the later one's while it is not done.
 *
 * <p>Only the likeliest causes enter the arithmetic: those that hold {@link #MASS} of what the
 * listed faults have together, at most {@link #MOST_CAUSES}. The rest is one more cause that
 * nothing cures.
 */
public final class Guide {
  private static final double MASS = 0.995;
  private static final int MOST_CAUSES = 48;

  /**
   * Minutes charged for giving up: an evening, and somebody else's time. It decides how unlikely a
   * repair may be and still be proposed. Chosen by simulated walks: with 240 the guide hands over
   * while a cure is still likely, with 600 people need more steps and minutes on average.
   */
  public static final double GIVE_UP = 400;

  /** Minutes that trying a repair costs on top of its own: a restart, and a look. */
  public static final double TRY_OUT = 3;

  /** Minutes to get a verbose log out of a machine that stops. */
  public static final double LOG_MINUTES = 10;

  private static final double LEAST_CHANCE = 0.004;

  /** Below this nothing can be told of what stopped. */
  private static final double LEAST_STOPPED = 1e-6;

  private static final double CONTRADICTION = 0.05;

  private final Base base;
  private final Beliefs beliefs;
  private final AnswerModel answers;
  private final Left left;
  private final Map<String, Double> minutes = new HashMap<>();

  /** A guide through a base. */
  public Guide(Base base) {
    this.base = base;
    this.beliefs = new Beliefs(base);
    this.answers = beliefs.answers();
    this.left = new Left(base, beliefs);
    for (Fault fault : base.faults()) {
      for (Fix fix : fault.fixes()) {
        minutes.put(fix.id(), cost(fix.minutes() + TRY_OUT, fix.risk(), fix.needs()));
      }
    }
    for (Check check : base.checks()) {
      minutes.put(check.id(), cost(check.minutes(), check.risk(), check.needs()));
    }
  }

  /** The base that it guides through. */
  public Base base() {
    return base;
  }

  private double cost(double own, Risk risk, List<String> needs) {
    return own
        + base.scale().riskMinutes().getOrDefault(risk, 0.0)
        + base.scale().needMinutes() * needs.size();
  }

  /** The ranking for somebody who has no log yet. */
  public Ranking withoutLog(String family) {
    return beliefs.prior(family);
  }

  /**
   * The ranking for somebody who has no log yet and does not name a kernel: the most common one.
   */
  public Ranking withoutLog() {
    return beliefs.prior(base.mostCommonFamily());
  }

  /**
   * The faults that a symptom can come from, likeliest first, for somebody who sees it and has no
   * log. Those of other kernels than the most common one come last.
   */
  public List<Cause> causesOf(String symptom) {
    Observations seen = Observations.NONE.sees(symptom);
    Map<String, Cause> causes = new LinkedHashMap<>();
    List<Ranking> rankings = new ArrayList<>(List.of(withoutLog()));
    base.families().forEach(family -> rankings.add(withoutLog(family.id())));
    for (Ranking ranking : rankings) {
      for (Cause cause : beliefs.update(ranking, seen).causes()) {
        if (cause.fault().symptoms().contains(symptom)) {
          causes.putIfAbsent(cause.fault().id(), cause);
        }
      }
    }
    return List.copyOf(causes.values());
  }

  /** Where a walk stands after what was said. */
  public Guidance guide(Ranking start, Observations said, Limits limits) {
    Ranking now = beliefs.update(start, said);
    boolean begun = !said.equals(Observations.NONE) || !limits.chosen().isEmpty();
    return new Guidance(
        now, step(begun ? stopped(now) : now, said, limits), contradictions(start, said));
  }

  /**
   * The ranking given that something stopped: who does a step knows that, whatever the log looks
   * like.
   */
  private static Ranking stopped(Ranking now) {
    double stopped = 1 - now.noStall();
    if (stopped <= LEAST_STOPPED) {
      return now;
    }
    return new Ranking(
        now.causes().stream()
            .map(c -> new Cause(c.fault(), c.probability() / stopped, c.factors()))
            .toList(),
        now.unlisted() / stopped,
        0,
        now.stops());
  }

  /** How likely an answer to a check is, as things stand. */
  public double chance(Ranking now, String check, String answer) {
    return beliefs.chance(now, check, answer);
  }

  /** The base's records behind the numbers of a {@link Troubleshooting} problem. */
  private record Setup(
      Troubleshooting problem,
      double[] belief,
      List<Cause> causes,
      List<Fault> fixFault,
      List<Fix> fixes,
      List<Check> checks) {}

  private Step step(Ranking now, Observations said, Limits limits) {
    Optional<Step> asked = chosen(now, said, limits);
    if (asked.isPresent()) {
      return asked.get();
    }
    Optional<Walk> walk = written(said, limits);
    if (walk.isPresent()) {
      return follow(walk.get());
    }
    Setup setup = setup(now, said, limits);
    if (!said.helped().isEmpty()) {
      Optional<Step> hold = hold(setup, said);
      if (hold.isPresent()) {
        return hold.get();
      }
    }
    Troubleshooting problem = setup.problem();
    double[] belief = setup.belief();
    boolean[] used = new boolean[problem.repairs()];
    double costNow = problem.costOfRepair(belief, used);
    Troubleshooting.Move move = problem.next(belief, used, new boolean[problem.questions()]);
    if (!limits.hasLog()) {
      double logGain = logSaving(setup, costNow) - LOG_MINUTES;
      if (logGain > Math.max(0, costNow - move.expected())) {
        return getLog(costNow, logGain);
      }
    }
    if (move instanceof Troubleshooting.Question asking) {
      return ask(setup, asking.question(), costNow, move.expected());
    }
    int repair = move instanceof Troubleshooting.Repair tried ? tried.repair() : -1;
    if (repair >= 0 && problem.chance(belief, repair) >= LEAST_CHANCE) {
      int due = due(setup, repair);
      int safe = isGrave(setup.fixes().get(due)) ? harmless(setup, said) : due;
      if (safe >= 0) {
        return repair(setup, due(setup, safe), costNow, "");
      }
      Step.Ask cautious = cautious(setup, said, costNow);
      return cautious != null ? cautious : repair(setup, due, costNow, "");
    }
    return left.handOver(now, said, limits);
  }

  /** What the person wants to try, with what has to be done before it. */
  private Optional<Step> chosen(Ranking now, Observations said, Limits limits) {
    for (String id : limits.chosen()) {
      Optional<Fix> fix = base.fix(id);
      if (fix.isEmpty() || !limits.known().allows(fix.get().scope().when(), said)) {
        continue;
      }
      Fault fault = base.faultOfFix(fix.get().id()).orElseThrow();
      Fix first = fix.get();
      for (int i = 0; i < fault.fixes().size(); i++) {
        Optional<Fix> before = first.scope().first().flatMap(base::fix);
        if (before.isEmpty() || said.tried().contains(before.get().id())) {
          break;
        }
        first = before.get();
      }
      double likely = Left.likely(now, fault);
      double chance = likely * first.cures().value();
      double cost = minutes.getOrDefault(first.id(), 10.0);
      return Optional.of(
          new Step.Repair(
              fault,
              first,
              chance,
              new Step.Why(
                  cost,
                  GIVE_UP,
                  GIVE_UP,
                  first.id().equals(fix.get().id())
                      ? "You chose it."
                      : "It comes before the repair that you chose.",
                  List.of(
                      chance(chance),
                      figure("Minutes that it is reckoned at, risk and restart included", cost)))));
    }
    return Optional.empty();
  }

  /** The walk written by hand for what is seen of a machine that prints nothing to read. */
  private Optional<Walk> written(Observations said, Limits limits) {
    if (limits.hasLog() || !said.answers().isEmpty() || !said.tried().isEmpty()) {
      return Optional.empty();
    }
    return base.walks().stream()
        .filter(walk -> !limits.walked().contains(walk.id()))
        .filter(walk -> walk.symptoms().stream().anyMatch(s -> said.symptoms().contains(s)))
        .filter(
            walk ->
                walk.symptoms().stream()
                    .flatMap(s -> base.symptom(s).stream())
                    .allMatch(s -> s.stages().get(0) == Stage.FIRMWARE))
        .findFirst();
  }

  private static Step follow(Walk walk) {
    int most = walk.steps().stream().mapToInt(Walk.Step::minutes).sum();
    return new Step.Follow(
        walk,
        new Step.Why(
            most,
            GIVE_UP,
            GIVE_UP,
            "What you see leaves no text to read, and this short walk was written for just that.",
            List.of(String.format(Locale.ROOT, "Minutes of all its steps together: %d", most))));
  }

  /** The lasting repair of what was mended for one boot, best chance for its cost first. */
  private Optional<Step> hold(Setup setup, Observations said) {
    int best = -1;
    double bestRatio = 0;
    for (int a = 0; a < setup.fixes().size(); a++) {
      double ratio = setup.problem().chance(setup.belief(), a) / setup.problem().cost(a);
      if (ratio > bestRatio && helps(setup.fixFault().get(a), said)) {
        best = a;
        bestRatio = ratio;
      }
    }
    if (best < 0) {
      return Optional.empty();
    }
    return Optional.of(
        repair(
            setup,
            due(setup, best),
            setup.problem().costOfRepair(setup.belief(), new boolean[setup.fixes().size()]),
            "You are in, for this boot only; this is what makes it hold."));
  }

  private boolean helps(Fault fault, Observations said) {
    return fault.fixes().stream()
        .anyMatch(fix -> beliefs.repairs().isAmong(fix.id(), said.helped()));
  }

  /**
   * What has to be done before a repair and is not done yet, or the repair itself: rescuing the
   * data has no chance of a cure, and comes before what may lose it all the same.
   */
  private static int due(Setup setup, int repair) {
    int due = repair;
    for (int i = 0; i < setup.fixes().size(); i++) {
      int next = index(setup.fixes(), setup.fixes().get(due).scope().first().orElse(""));
      if (next < 0) {
        return due;
      }
      due = next;
    }
    return due;
  }

  private static int index(List<Fix> fixes, String id) {
    for (int i = 0; i < fixes.size(); i++) {
      if (fixes.get(i).id().equals(id)) {
        return i;
      }
    }
    return -1;
  }

  /** Fixes that may be proposed: what has to be done before them is done, or can be. */
  private List<Fix> possible(Fault fault, Observations said, Limits limits) {
    List<Fix> open = new ArrayList<>(fault.fixes());
    open.removeIf(
        fix ->
            beliefs.repairs().isAmong(fix.id(), said.tried())
                || beliefs.repairs().isAmong(fix.id(), limits.skipped())
                || beliefs.repairs().isAmong(fix.id(), said.helped())
                || !said.helped().isEmpty() && !fix.scope().lasting()
                || fix.needs().stream().anyMatch(limits.lacks()::contains)
                || !limits.known().allows(fix.scope().when(), said));
    boolean changed = true;
    while (changed) {
      changed =
          open.removeIf(
              fix ->
                  fix.scope()
                      .first()
                      .filter(id -> !isDone(id, said) && index(open, id) < 0)
                      .isPresent());
    }
    return open;
  }

  private static boolean isDone(String fix, Observations said) {
    return said.tried().contains(fix) || said.helped().contains(fix);
  }

  /** Minutes of a repair, with those of what has to be done before it. */
  private double minutes(Fix fix, List<Fix> open) {
    double sum = minutes.getOrDefault(fix.id(), 10.0);
    int at = index(open, fix.scope().first().orElse(""));
    for (int i = 0; i < open.size() && at >= 0; i++) {
      sum += minutes.getOrDefault(open.get(at).id(), 10.0);
      at = index(open, open.get(at).scope().first().orElse(""));
    }
    return sum;
  }

  private static boolean isGrave(Fix fix) {
    return fix.isGrave();
  }

  /**
   * The best harmless repair when nothing was done yet; −1 when there is none, or something was
   * done before.
   */
  private int harmless(Setup setup, Observations said) {
    if (!said.answers().isEmpty() || !said.tried().isEmpty()) {
      return setup.problem().bestRepair(setup.belief(), new boolean[setup.fixes().size()]);
    }
    boolean[] used = new boolean[setup.fixes().size()];
    for (int a = 0; a < used.length; a++) {
      used[a] = isGrave(setup.fixes().get(a));
    }
    int best = setup.problem().bestRepair(setup.belief(), used);
    return best >= 0 && setup.problem().chance(setup.belief(), best) >= LEAST_CHANCE ? best : -1;
  }

  /**
   * Before a grave repair as the very first step: the question that tells most, even if it doesn't
   * pay.
   */
  private Step.@org.jspecify.annotations.Nullable Ask cautious(
      Setup setup, Observations said, double costNow) {
    if (!said.answers().isEmpty() || !said.tried().isEmpty()) {
      return null;
    }
    int best = -1;
    double bestNet = Double.NEGATIVE_INFINITY;
    for (int q = 0; q < setup.problem().questions(); q++) {
      double net =
          setup.problem().saving(setup.belief(), new boolean[setup.fixes().size()], q)
              - setup.problem().questionCost(q);
      if (net > bestNet) {
        bestNet = net;
        best = q;
      }
    }
    return best < 0 ? null : ask(setup, best, costNow, costNow - bestNet);
  }

  private Setup setup(Ranking now, Observations said, Limits limits) {
    List<Cause> causes = new ArrayList<>();
    double listed = 1 - now.unlisted() - now.noStall();
    double sum = 0;
    for (Cause cause : now.causes()) {
      if (causes.size() >= MOST_CAUSES || sum >= MASS * listed) {
        break;
      }
      causes.add(cause);
      sum += cause.probability();
    }
    double[] belief = new double[causes.size() + 1];
    for (int f = 0; f < causes.size(); f++) {
      belief[f] = causes.get(f).probability();
    }
    belief[causes.size()] = Math.max(0, 1 - sum);
    List<Fix> fixes = new ArrayList<>();
    List<Fault> fixFault = new ArrayList<>();
    List<Integer> cured = new ArrayList<>();
    for (int f = 0; f < causes.size(); f++) {
      Fault fault = causes.get(f).fault();
      for (Fix fix : possible(fault, said, limits)) {
        fixes.add(fix);
        fixFault.add(fault);
        cured.add(f);
      }
    }
    List<Check> checks = new ArrayList<>();
    Set<String> checkIds = ToThePoint.checks(now);
    fixes.forEach(fix -> Fitting.checks(fix).forEach(checkIds::add));
    for (Check check : base.checks()) {
      if (checkIds.contains(check.id())
          && limits.known().allows(check.when(), said)
          && !said.answers().containsKey(check.id())
          && !limits.skipped().contains(check.id())
          && check.needs().stream().noneMatch(limits.lacks()::contains)) {
        checks.add(check);
      }
    }
    Fitting fitting = new Fitting(answers, fixes, fixFault, said);
    Troubleshooting problem =
        new Troubleshooting(
            cured.stream().mapToInt(i -> i).toArray(),
            fitting.cures(),
            fixes.stream().mapToDouble(x -> minutes(x, fixes)).toArray(),
            replies(checks, causes),
            checks.stream().mapToDouble(c -> minutes.getOrDefault(c.id(), 5.0)).toArray(),
            GIVE_UP,
            fitting.byReply(checks));
    return new Setup(problem, belief, causes, fixFault, fixes, checks);
  }

  private double[][][] replies(List<Check> checks, List<Cause> causes) {
    double[][][] replies = new double[checks.size()][][];
    for (int q = 0; q < checks.size(); q++) {
      Check check = checks.get(q);
      replies[q] = new double[check.answers().size()][causes.size() + 1];
      for (int r = 0; r < check.answers().size(); r++) {
        String answer = check.answers().get(r).id();
        for (int f = 0; f < causes.size(); f++) {
          replies[q][r][f] = answers.chance(causes.get(f).fault(), check.id(), answer);
        }
        replies[q][r][causes.size()] = answers.chanceOtherwise(check.id(), answer);
      }
    }
    return replies;
  }

  /**
   * What a log is expected to save: with the chance that it shows the fault's best sign, the fault
   * is known and only its own repairs are paid for; otherwise everything stays as it is.
   */
  private static double logSaving(Setup setup, double costNow) {
    double after = 0;
    double[] belief = setup.belief();
    boolean[] used = new boolean[setup.fixes().size()];
    double seen = 0;
    for (int f = 0; f < setup.causes().size(); f++) {
      double shows =
          setup.causes().get(f).fault().signs().stream()
              .map(Sign::shows)
              .mapToDouble(c -> c.value())
              .max()
              .orElse(0);
      double[] known = new double[belief.length];
      known[f] = belief[f] * shows;
      after += setup.problem().costOfRepair(known, used);
      seen += known[f];
    }
    return costNow - after - (1 - seen) * costNow;
  }

  private static Step getLog(double costNow, double gain) {
    return new Step.GetLog(
        new Step.Why(
            LOG_MINUTES,
            costNow,
            costNow - gain,
            "The text that the boot prints would tell more than any question here.",
            List.of(
                figure("Expected minutes to the cure as things stand", costNow),
                figure("Expected minutes with the text", costNow - gain))));
  }

  private static Step.Ask ask(Setup setup, int question, double costNow, double costAfter) {
    double cost = setup.problem().questionCost(question);
    double[][] parts = new double[setup.problem().replies(question)][];
    for (int r = 0; r < parts.length; r++) {
      parts[r] = setup.problem().replied(setup.belief(), question, r);
    }
    return new Step.Ask(
        setup.checks().get(question),
        new Step.Why(
            cost,
            costNow,
            costAfter,
            costAfter < costNow
                ? "The answer is expected to save more time than it takes."
                : "The next repair is a grave one, so it is worth looking first.",
            List.of(
                figure("Expected minutes to the cure as things stand", costNow),
                figure("Expected minutes saved by the answer", costNow - costAfter + cost),
                figure("Minutes that the look costs", cost),
                String.format(
                    Locale.ROOT,
                    "Uncertainty about the cause: %.2f bits, of which the answer is expected to take away %.2f",
                    Entropy.bits(setup.belief()),
                    Entropy.gain(parts)))));
  }

  /** Proposes a repair; {@code words} say why, where it isn't for its chance and cost. */
  private Step repair(Setup setup, int repair, double costNow, String words) {
    Fix first = setup.fixes().get(repair);
    double chance = 0;
    for (int a = 0; a < setup.fixes().size(); a++) {
      // Under another fault the same repair has its chance as well.
      if (beliefs.repairs().same(first.id(), setup.fixes().get(a).id())) {
        chance += setup.problem().chance(setup.belief(), a);
      }
    }
    double cost = setup.problem().cost(repair);
    boolean[] used = new boolean[setup.fixes().size()];
    used[repair] = true;
    double after =
        cost + setup.problem().costOfRepair(setup.problem().failed(setup.belief(), repair), used);
    // Those whose fault it cured pay nothing more; the belief after a failure sums to less than 1
    // by just that share.
    return new Step.Repair(
        setup.fixFault().get(repair),
        first,
        chance,
        new Step.Why(
            cost,
            costNow,
            after,
            !words.isEmpty()
                ? words
                : setup.fixes().stream()
                        .anyMatch(f -> f.scope().first().equals(Optional.of(first.id())))
                    ? "It comes before a repair that has a good chance for its cost."
                    : "Of all repairs it has the best chance for its cost, and no question left would pay for"
                        + " itself.",
            List.of(
                chance(chance),
                figure("Minutes that it is reckoned at, risk and restart included", cost),
                figure("Expected minutes to the cure from here", costNow))));
  }

  private static String figure(String what, double minutes) {
    return String.format(Locale.ROOT, "%s: %.1f", what, minutes);
  }

  private static String chance(double chance) {
    return String.format(Locale.ROOT, "Chance that it cures: %.0f %%", chance * 100);
  }

  private List<Guidance.Contradiction> contradictions(Ranking start, Observations said) {
    List<Guidance.Contradiction> found = new ArrayList<>();
    said.answers()
        .forEach(
            (check, answer) -> {
              if (!answer.equals(Observations.UNKNOWN)) {
                Ranking others = beliefs.update(start, said.takeBack(check));
                double chance = beliefs.chance(others, check, answer);
                if (chance < CONTRADICTION) {
                  found.add(new Guidance.Contradiction(check, answer, chance));
                }
              }
            });
    return found;
  }
}
