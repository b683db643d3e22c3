package standstill.match;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ObjIntConsumer;
import java.util.function.Predicate;
import java.util.stream.Stream;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.Milestone;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Statement;
import standstill.base.Trail;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.machine.Found;
import standstill.machine.Machine;
import standstill.machine.MachineReader;
import standstill.machine.Mention;
import standstill.machine.Said;
import standstill.text.Pattern;
import standstill.text.PatternSet;
import standstill.trace.Gap;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * Finds all signs and false trails of a family in one pass over a boot.
 *
 * <p>The shortcut is the literal prefilter; {@link #withoutPrefilter} makes a matcher that runs
 * every pattern on every line, and a test shows that both find the same.
 */
public final class SignMatcher {
  private record OnLine(Fault fault, Sign sign, SignForm.OnLine form) {}

  private record OnFact(Fault fault, Sign sign, Statement statement) {}

  private record Missing(Fault fault, Sign sign, SignForm.Without form) {}

  private record Milepost(Fault fault, Sign sign, SignForm.Reached form) {}

  private record TrailLine(Trail trail, Pattern pattern) {}

  private final Family family;
  private final Map<String, Integer> order = new HashMap<>();
  private final List<OnLine> onLine = new ArrayList<>();
  private final List<OnFact> onFact = new ArrayList<>();
  private final List<Missing> missing = new ArrayList<>();
  private final Set<String> stopIds = new HashSet<>();
  private final List<Milepost> reached = new ArrayList<>();
  private final List<TrailLine> trailLines = new ArrayList<>();

  /** Places of the patterns on whose lines harmless lines depend. */
  private final Map<Trail.Proviso, Integer> provisos = new IdentityHashMap<>();

  private final PatternSet patterns;
  private final boolean shortcut;
  private final MachineReader machines;

  /** A matcher for the faults of a family. */
  public SignMatcher(Base base, Family family) {
    this(base, family, true);
  }

  /** A matcher that takes no shortcut: slower by far, and the same findings. */
  public static SignMatcher withoutPrefilter(Base base, Family family) {
    return new SignMatcher(base, family, false);
  }

  private SignMatcher(Base base, Family family, boolean shortcut) {
    this.family = family;
    this.shortcut = shortcut;
    List<Pattern> all = new ArrayList<>();
    List<SignForm.Join> joins = new ArrayList<>();
    List<Fault> bearers = new ArrayList<>(base.faultsOf(family.id()));
    base.stopsOf(family.id()).forEach(stop -> bearers.add(stop.bearer()));
    base.stopsOf(family.id()).forEach(stop -> stopIds.add(stop.id()));
    for (Fault fault : bearers) {
      for (Sign sign : fault.signs()) {
        order.put(sign.id(), order.size());
        if (sign.form() instanceof SignForm.OnLine form) {
          onLine.add(new OnLine(fault, sign, form));
          all.add(form.line());
          joins.addAll(form.joins());
        } else if (sign.form() instanceof SignForm.OfFact form) {
          onFact.add(new OnFact(fault, sign, form.statement()));
        } else if (sign.form() instanceof SignForm.Without form) {
          missing.add(new Missing(fault, sign, form));
        } else if (sign.form() instanceof SignForm.Reached form) {
          reached.add(new Milepost(fault, sign, form));
        }
      }
    }
    for (Trail trail : base.trails()) {
      if (family.isAmong(trail.families())) {
        for (Trail.TrailSign sign : trail.signs()) {
          trailLines.add(new TrailLine(trail, sign.line()));
          all.add(sign.line());
        }
      }
    }
    joins.forEach(join -> all.add(join.line()));
    for (Trail trail : base.trails()) {
      for (Trail.Proviso proviso : trail.only()) {
        if (family.isAmong(trail.families()) && proviso.form() instanceof SignForm.OnLine form) {
          provisos.put(proviso, all.size());
          all.add(form.line());
        }
      }
    }
    patterns = new PatternSet(all);
    machines = new MachineReader(family);
  }

  /** Finds everything in one boot. */
  public Matches match(Boot boot, Trace trace) {
    List<LogLine> lines = boot.lines();
    Map<Integer, Lines> found = new TreeMap<>();
    BitSet explained = new BitSet(lines.size());
    for (int i = 0; i < lines.size(); i++) {
      LogLine line = lines.get(i);
      int index = i;
      String text = MachineReader.bounded(line.message());
      candidates(
          text,
          boot.mayBeTyped(),
          (pattern, place) ->
              pattern
                  .find(text)
                  .ifPresent(
                      match ->
                          found
                              .computeIfAbsent(place, this::linesOf)
                              .add(new Hit(index, line.number(), line.text(), match.values()))));
    }
    trace.milestones().stream().map(Reached::index).forEach(explained::set);
    List<SeenTrail> trails = trails(found, trace, explained);
    List<Complaint> complaints = Complaint.of(boot, explained);
    List<Seen> signs = signs(found, boot, trace, explained);
    Machine machine = machines.read(boot, trace);
    Set<String> untold = new HashSet<>();
    signs.addAll(mileposts(boot, trace));
    signs.addAll(facts(machine, untold));
    signs.sort(Comparator.comparingInt(seen -> order.getOrDefault(seen.sign().id(), 0)));
    return new Matches(signs, trails, complaints, explained, untold, Optional.of(machine));
  }

  private List<Seen> facts(Machine machine, Set<String> untold) {
    Map<Statement, Said> said = new EnumMap<>(Statement.class);
    List<Seen> signs = new ArrayList<>();
    for (OnFact each : onFact) {
      Said answer = said.computeIfAbsent(each.statement(), machine::says);
      if (answer.holds()) {
        List<Hit> hits = hits(answer);
        signs.add(new Seen(each.fault(), each.sign(), hits, Math.max(1, hits.size())));
      } else if (answer.verdict() == Said.Verdict.NOT_COVERED) {
        untold.add(each.sign().id());
      }
    }
    return signs;
  }

  /** A line may show several things; it is named once for each. */
  private static List<Hit> hits(Said said) {
    List<Hit> hits = new ArrayList<>();
    for (Found found : said.found()) {
      for (Mention line : found.lines()) {
        if (hits.size() < Seen.MOST_HITS) {
          hits.add(new Hit(line.index(), line.line(), line.text(), found.values()));
        }
      }
    }
    hits.sort(Comparator.comparingInt(Hit::index));
    return hits;
  }

  private Lines linesOf(int place) {
    boolean joined =
        place < onLine.size()
            ? !onLine.get(place).form().joins().isEmpty()
            : place >= onLine.size() + trailLines.size();
    return joined ? Lines.ofJoined() : new Lines();
  }

  private void candidates(String message, boolean typed, ObjIntConsumer<Pattern> taker) {
    if (shortcut) {
      patterns.candidates(message, typed, taker);
    } else {
      patterns.all(message, typed, taker);
    }
  }

  private List<SeenTrail> trails(Map<Integer, Lines> found, Trace trace, BitSet explained) {
    harmlessOnly(found, trace);
    Map<String, SeenTrail> byTrail = new java.util.LinkedHashMap<>();
    for (int t = 0; t < trailLines.size(); t++) {
      Lines lines = found.get(onLine.size() + t);
      if (lines != null) {
        lines.markAll(explained);
        Trail trail = trailLines.get(t).trail();
        SeenTrail before = byTrail.get(trail.id());
        List<Hit> hits = new ArrayList<>(before == null ? List.of() : before.hits());
        hits.addAll(lines.kept());
        hits.sort(java.util.Comparator.comparingInt(Hit::index));
        byTrail.put(
            trail.id(),
            new SeenTrail(trail, hits, lines.times + (before == null ? 0 : before.times())));
      }
    }
    return new ArrayList<>(byTrail.values());
  }

  /** Takes out the lines of false trails that are not harmless in this boot. */
  private void harmlessOnly(Map<Integer, Lines> found, Trace trace) {
    for (int t = 0; t < trailLines.size(); t++) {
      Trail trail = trailLines.get(t).trail();
      int place = onLine.size() + t;
      Lines lines = trail.only().isEmpty() ? null : found.get(place);
      if (lines != null) {
        Lines harmless =
            lines.where(hit -> trail.only().stream().allMatch(p -> holds(p, hit, found, trace)));
        if (harmless.times == 0) {
          found.remove(place);
        } else {
          found.put(place, harmless);
        }
      }
    }
  }

  private boolean holds(Trail.Proviso proviso, Hit hit, Map<Integer, Lines> found, Trace trace) {
    if (proviso.form() instanceof SignForm.Without without) {
      Optional<Milestone> milestone = family.milestone(without.milestone());
      return proviso.there()
          ? milestone.isPresent() && isMissing(milestone.get(), trace)
          : trace.milestone(without.milestone()).isPresent();
    }
    Lines lines = found.get(Objects.requireNonNull(provisos.get(proviso)));
    boolean there =
        lines != null && lines.kept().stream().anyMatch(other -> Joined.agree(hit, other));
    return there == proviso.there();
  }

  private List<Seen> signs(Map<Integer, Lines> found, Boot boot, Trace trace, BitSet explained) {
    int lineCount = boot.lines().size();
    List<Seen> signs = new ArrayList<>();
    int join = onLine.size() + trailLines.size();
    for (int s = 0; s < onLine.size(); s++) {
      OnLine each = onLine.get(s);
      Lines lines = found.get(s);
      List<Joined> joined = new ArrayList<>();
      for (SignForm.Join demand : each.form().joins()) {
        joined.add(new Joined(demand, found.getOrDefault(join++, new Lines())));
      }
      if (lines == null) {
        continue;
      }
      for (Joined other : joined) {
        lines = lines.where(hit -> other.lets(hit, boot));
      }
      // A stop says what happened in a line, and explains it no more than the person who reads it.
      if (!stopIds.contains(each.fault().id())) {
        lines.markAll(explained);
      }
      Lines fitting = each.form().afterGap() > 0 ? lines.afterGap(each.form(), trace) : lines;
      fitting = each.form().atEnd() > 0 ? fitting.from(lineCount - each.form().atEnd()) : fitting;
      if (fitting.times >= each.form().repeats()) {
        signs.add(new Seen(each.fault(), each.sign(), fitting.kept(), fitting.times));
      }
    }
    for (Missing each : missing) {
      Optional<Milestone> milestone = family.milestone(each.form().milestone());
      if (milestone.isPresent() && isMissing(milestone.get(), trace)) {
        signs.add(new Seen(each.fault(), each.sign(), List.of(), 1));
      }
    }
    return signs;
  }

  /** Milestones that were reached, each with its first line. */
  private List<Seen> mileposts(Boot boot, Trace trace) {
    List<Seen> seen = new ArrayList<>();
    for (Milepost each : reached) {
      trace
          .milestone(each.form().milestone())
          .ifPresent(
              milestone -> {
                LogLine line = boot.lines().get(milestone.index());
                Hit hit = new Hit(milestone.index(), line.number(), line.text(), Map.of());
                seen.add(new Seen(each.fault(), each.sign(), List.of(hit), 1));
              });
    }
    return seen;
  }

  /** A stage that the boot never left says nothing by not having ended well. */
  private static boolean isMissing(Milestone milestone, Trace trace) {
    boolean implied =
        milestone.proves() == Milestone.Proves.ENDS && !trace.stage().isAfter(milestone.stage());
    return !implied
        && trace.complete().contains(milestone.stage())
        && trace.milestone(milestone.id()).isEmpty();
  }

  /** The lines of one pattern: the first few and the last few are kept, all are counted. */
  static final class Lines {
    private static final int LAST = 40;
    private static final int FIRST_OF_JOINED = 400;
    private final int most;
    private final List<Hit> first = new ArrayList<>();
    private final ArrayDeque<Hit> last = new ArrayDeque<>();
    private final BitSet all = new BitSet();
    private int times;

    Lines() {
      this(Seen.MOST_HITS - 1);
    }

    private Lines(int most) {
      this.most = most;
    }

    /** For a pattern of which every line may matter to another one. */
    static Lines ofJoined() {
      return new Lines(FIRST_OF_JOINED);
    }

    void add(Hit hit) {
      times++;
      all.set(hit.index());
      if (first.size() < most) {
        first.add(hit);
      } else {
        last.addLast(hit);
        if (last.size() > LAST) {
          last.removeFirst();
        }
      }
    }

    void markAll(BitSet explained) {
      explained.or(all);
    }

    List<Hit> kept() {
      List<Hit> hits =
          new ArrayList<>(first.subList(0, Math.min(first.size(), Seen.MOST_HITS - 1)));
      if (!last.isEmpty()) {
        hits.add(last.getLast());
      } else if (first.size() >= Seen.MOST_HITS) {
        hits.add(first.get(first.size() - 1));
      }
      return hits;
    }

    /** All that were kept, in order. */
    Stream<Hit> hits() {
      return Stream.concat(first.stream(), last.stream());
    }

    /** Those for which a demand holds; exact as long as all were kept. */
    Lines where(Predicate<Hit> demand) {
      Lines some = new Lines(most);
      hits().filter(demand).forEach(some::add);
      return some;
    }

    /** Those at or after a place in the boot; exact as long as no more than {@link #LAST} fit. */
    Lines from(int index) {
      Lines some = where(hit -> hit.index() >= index);
      some.times = index <= 0 ? times : all.get(index, Math.max(index, all.length())).cardinality();
      return some;
    }

    Lines afterGap(SignForm.OnLine form, Trace trace) {
      Lines some = new Lines();
      for (Gap gap : trace.gaps()) {
        if (gap.seconds() >= form.afterGap() && all.get(gap.index())) {
          hits().filter(hit -> hit.index() == gap.index()).forEach(some::add);
        }
      }
      return some;
    }
  }
}
