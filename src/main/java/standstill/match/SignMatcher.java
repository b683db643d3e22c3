package standstill.match;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ObjIntConsumer;
import java.util.function.Predicate;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.Milestone;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Trail;
import standstill.log.Boot;
import standstill.log.LogLine;
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
  /** Longest message that is matched, in characters; what follows is left out. */
  private static final int LONGEST_MESSAGE = 4_000;

  private record OnLine(Fault fault, Sign sign, SignForm.OnLine form) {}

  private record Missing(Fault fault, Sign sign, SignForm.Without form) {}

  private record TrailLine(Trail trail, Pattern pattern) {}

  /** A line that harmless lines depend on, with its trail. */
  private record ProvisoLine(Trail trail, Trail.Proviso proviso) {}

  private final Family family;
  private final List<OnLine> onLine = new ArrayList<>();
  private final List<Missing> missing = new ArrayList<>();
  private final List<TrailLine> trailLines = new ArrayList<>();
  private final List<ProvisoLine> provisoLines = new ArrayList<>();
  private final PatternSet patterns;
  private final boolean shortcut;

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
    for (Fault fault : base.faultsOf(family.id())) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine form) {
          onLine.add(new OnLine(fault, sign, form));
          all.add(form.line());
        } else if (sign.form() instanceof SignForm.Without form) {
          missing.add(new Missing(fault, sign, form));
        }
      }
    }
    for (Trail trail : base.trails()) {
      if (trail.families().contains(family.id())) {
        for (Trail.TrailSign sign : trail.signs()) {
          trailLines.add(new TrailLine(trail, sign.line()));
          all.add(sign.line());
        }
      }
    }
    for (Trail trail : base.trails()) {
      for (Trail.Proviso proviso : trail.only()) {
        if (trail.families().contains(family.id())
            && proviso.form() instanceof SignForm.OnLine form) {
          provisoLines.add(new ProvisoLine(trail, proviso));
          all.add(form.line());
        }
      }
    }
    patterns = new PatternSet(all);
  }

  /** Finds everything in one boot. */
  public Matches match(Boot boot, Trace trace) {
    List<LogLine> lines = boot.lines();
    Map<Integer, Lines> found = new TreeMap<>();
    BitSet explained = new BitSet(lines.size());
    for (int i = 0; i < lines.size(); i++) {
      LogLine line = lines.get(i);
      int index = i;
      String text = bounded(line.message());
      candidates(
          text,
          boot.mayBeTyped(),
          (pattern, place) ->
              pattern
                  .find(text)
                  .ifPresent(
                      match ->
                          found
                              .computeIfAbsent(place, k -> new Lines())
                              .add(new Hit(index, line.number(), line.text(), match.values()))));
    }
    trace.milestones().stream().map(Reached::index).forEach(explained::set);
    List<SeenTrail> trails = trails(found, trace, explained);
    List<Complaint> complaints = Complaint.of(boot, explained);
    List<Seen> signs = signs(found, lines.size(), trace, explained);
    return new Matches(signs, trails, complaints, explained);
  }

  /** A message as far as it is matched. */
  static String bounded(String message) {
    return message.length() > LONGEST_MESSAGE ? message.substring(0, LONGEST_MESSAGE) : message;
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
            lines.keeping(
                hit -> trail.only().stream().allMatch(p -> holds(p, trail, hit, found, trace)));
        if (harmless.times == 0) {
          found.remove(place);
        } else {
          found.put(place, harmless);
        }
      }
    }
  }

  private boolean holds(
      Trail.Proviso proviso, Trail trail, Hit hit, Map<Integer, Lines> found, Trace trace) {
    if (proviso.form() instanceof SignForm.Without without) {
      Optional<Milestone> milestone = family.milestone(without.milestone());
      return proviso.there()
          ? milestone.isPresent() && isMissing(milestone.get(), trace)
          : trace.milestone(without.milestone()).isPresent();
    }
    Lines lines =
        found.get(
            onLine.size()
                + trailLines.size()
                + provisoLines.indexOf(new ProvisoLine(trail, proviso)));
    boolean there = lines != null && lines.kept().stream().anyMatch(other -> agree(hit, other));
    return there == proviso.there();
  }

  /** Whether two lines speak of the same thing, where they name it. */
  private static boolean agree(Hit one, Hit other) {
    return one.values().entrySet().stream()
        .allMatch(
            each ->
                other
                    .values()
                    .getOrDefault(each.getKey(), each.getValue())
                    .equals(each.getValue()));
  }

  private List<Seen> signs(
      Map<Integer, Lines> found, int lineCount, Trace trace, BitSet explained) {
    List<Seen> signs = new ArrayList<>();
    for (int s = 0; s < onLine.size(); s++) {
      OnLine each = onLine.get(s);
      Lines lines = found.get(s);
      if (lines == null) {
        continue;
      }
      lines.markAll(explained);
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

  /** A stage that the boot never left says nothing by not having ended well. */
  private static boolean isMissing(Milestone milestone, Trace trace) {
    boolean implied =
        milestone.proves() == Milestone.Proves.ENDS && !trace.stage().isAfter(milestone.stage());
    return !implied
        && trace.complete().contains(milestone.stage())
        && trace.milestone(milestone.id()).isEmpty();
  }

  /** The lines of one pattern: the first few and the last few are kept, all are counted. */
  private static final class Lines {
    private static final int LAST = 40;
    private final List<Hit> first = new ArrayList<>();
    private final java.util.ArrayDeque<Hit> last = new java.util.ArrayDeque<>();
    private final BitSet all = new BitSet();
    private int times;

    void add(Hit hit) {
      times++;
      all.set(hit.index());
      if (first.size() < Seen.MOST_HITS - 1) {
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
      List<Hit> hits = new ArrayList<>(first);
      if (!last.isEmpty()) {
        hits.add(last.getLast());
      }
      return hits;
    }

    /** Those of the kept ones that pass; of a line that comes very often the middle is left out. */
    Lines keeping(Predicate<Hit> passes) {
      Lines some = new Lines();
      first.stream().filter(passes).forEach(some::add);
      last.stream().filter(passes).forEach(some::add);
      return some;
    }

    /** Those at or after a place in the boot; exact as long as no more than {@link #LAST} fit. */
    Lines from(int index) {
      Lines some = new Lines();
      first.stream().filter(hit -> hit.index() >= index).forEach(some::add);
      last.stream().filter(hit -> hit.index() >= index).forEach(some::add);
      some.times = index <= 0 ? times : all.get(index, Math.max(index, all.length())).cardinality();
      return some;
    }

    Lines afterGap(SignForm.OnLine form, Trace trace) {
      Lines some = new Lines();
      for (Gap gap : trace.gaps()) {
        if (gap.seconds() >= form.afterGap() && all.get(gap.index())) {
          first.stream().filter(hit -> hit.index() == gap.index()).forEach(some::add);
          last.stream().filter(hit -> hit.index() == gap.index()).forEach(some::add);
        }
      }
      return some;
    }
  }
}
