package standstill.audit;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.match.Matches;
import standstill.match.Seen;
import standstill.match.SignMatcher;
import standstill.rank.Ranker;
import standstill.rank.Ranking;
import standstill.report.Sighting;
import standstill.text.Problem;
import standstill.trace.Gap;
import standstill.trace.Trace;

/**
 * Every fault comes first, or shares the first place, on the best evidence that there can be for
 * it.
 *
 * <p>The evidence is its own texts: those of all signs together, then those of each event alone,
 * then each text alone, each time as a boot that ended in a stage in which the fault stops boots,
 * and as an excerpt that tells no stage. Its labelled boots are tried too. A fault that is
 * outranked on all of them is dead weight: another one answers wherever it could.
 */
final class NeverWins implements Rule {
  /** Two causes share a place when their probabilities differ by less than one in a thousand. */
  private static final double TIE = 0.999;

  @Override
  public String id() {
    return "never-wins";
  }

  @Override
  public String title() {
    return "Every fault is ranked first on its own best evidence";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    Ranker ranker = new Ranker(base);
    Map<Family, SignMatcher> matchers = new LinkedHashMap<>();
    for (Family family : base.families()) {
      matchers.put(family, new SignMatcher(base, family));
    }
    Map<String, List<Sighting>> labelled = labelled(subject);
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : base.faults()) {
      Standing best = best(fault, ranker, matchers, labelled.getOrDefault(fault.id(), List.of()));
      if (!best.isFirst()) {
        problems.add(
            Problem.warning(
                fault.where(),
                "fault '" + fault.id() + "' is never ranked first",
                best.behind().isEmpty()
                    ? "no family has it"
                    : "on its best evidence '"
                        + best.behind()
                        + "' is "
                        + String.format("%.1f", 1 / best.share())
                        + " times as likely; give it a sign that the other lacks, or join the two"));
      }
    }
    return problems;
  }

  /**
   * How a fault stands.
   *
   * @param share its probability as a share of the first cause's
   * @param behind the fault in front of it
   */
  private record Standing(double share, String behind) {
    boolean isFirst() {
      return share >= TIE;
    }

    Standing or(Standing other) {
      return other.share > share ? other : this;
    }
  }

  /** How a fault stands at best; looks no further once it has come first. */
  private static Standing best(
      Fault fault, Ranker ranker, Map<Family, SignMatcher> matchers, List<Sighting> labelled) {
    Standing best = new Standing(0, "");
    for (Map.Entry<Family, SignMatcher> family : matchers.entrySet()) {
      if (family.getKey().isAmong(fault.families())) {
        for (List<Shown> signs : evidence(fault)) {
          if (best.isFirst()) {
            return best;
          }
          for (Sighting seen : made(fault, family.getKey().id(), signs, family.getValue())) {
            best = best.or(standing(fault, ranker, seen));
          }
        }
      }
    }
    for (Sighting seen : labelled) {
      best = best.or(standing(fault, ranker, seen));
    }
    return best;
  }

  private static Standing standing(Fault fault, Ranker ranker, Sighting seen) {
    Ranking ranking = ranker.rank(seen.family(), seen.trace(), seen.matches());
    double own =
        ranking.causes().stream()
            .filter(c -> c.fault().id().equals(fault.id()))
            .mapToDouble(c -> c.probability())
            .findFirst()
            .orElse(0);
    return ranking
        .top()
        .map(first -> new Standing(own / first.probability(), first.fault().id()))
        .orElse(new Standing(0, ""));
  }

  /** A sign and the texts of it that a log shows. */
  private record Shown(Sign sign, List<String> texts) {}

  /** All signs together, then those of each event alone, then each text alone. */
  private static List<List<Shown>> evidence(Fault fault) {
    List<List<Shown>> all = new ArrayList<>();
    all.add(fault.signs().stream().map(s -> new Shown(s, s.seen())).toList());
    Map<String, List<Shown>> events = new LinkedHashMap<>();
    for (Shown shown : all.get(0)) {
      events.computeIfAbsent(shown.sign().event(), k -> new ArrayList<>()).add(shown);
    }
    all.addAll(events.values());
    for (Sign sign : fault.signs()) {
      sign.seen().forEach(text -> all.add(List.of(new Shown(sign, List.of(text)))));
    }
    return all;
  }

  /** The signs as small logs: an excerpt, and a boot that ended in each of the fault's stages. */
  private static List<Sighting> made(
      Fault fault, String family, List<Shown> signs, SignMatcher matcher) {
    List<LogLine> lines = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    List<Seen> missing = new ArrayList<>();
    for (Shown shown : signs) {
      if (shown.sign().form() instanceof SignForm.OnLine onLine) {
        int texts = shown.texts().size();
        for (int i = 0; texts > 0 && i < Math.max(onLine.repeats(), texts); i++) {
          int number = lines.size() + 1;
          if (onLine.afterGap() > 0) {
            gaps.add(new Gap(lines.size(), number, onLine.afterGap()));
          }
          String text = shown.texts().get(i % texts);
          lines.add(
              new LogLine(
                  number, number, text, text, OptionalDouble.empty(), OptionalInt.empty(), ""));
        }
      } else {
        missing.add(new Seen(fault, shown.sign(), List.of(), 1));
      }
    }
    Boot boot = new Boot(1, lines);
    List<Sighting> all = new ArrayList<>();
    for (Stage stop : fault.stopsIn()) {
      for (boolean known : new boolean[] {true, false}) {
        Trace trace =
            new Trace(
                stop,
                known,
                List.of(),
                EnumSet.of(stop),
                Set.of(),
                gaps,
                List.of(),
                lines.size(),
                lines.stream().map(line -> stop).toList(),
                OptionalInt.empty(),
                false);
        Matches found = matcher.match(boot, trace);
        List<Seen> seen = new ArrayList<>(found.signs());
        seen.addAll(missing);
        all.add(
            new Sighting(
                family,
                boot,
                trace,
                new Matches(seen, found.trails(), found.complaints(), new BitSet())));
      }
    }
    return all;
  }

  private static Map<String, List<Sighting>> labelled(Subject subject) {
    Map<String, List<Sighting>> all = new HashMap<>();
    for (Subject.Labelled boot : subject.boots()) {
      List<String> right = new ArrayList<>(boot.label().also());
      right.add(boot.label().label());
      for (String id : right) {
        boot.seen().ifPresent(s -> all.computeIfAbsent(id, k -> new ArrayList<>()).add(s));
      }
    }
    return all;
  }
}
