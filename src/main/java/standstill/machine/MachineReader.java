package standstill.machine;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.DeviceClass;
import standstill.base.FactLine;
import standstill.base.Family;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.log.Boot;
import standstill.log.LogLine;
import standstill.text.Pattern;
import standstill.text.PatternSet;
import standstill.trace.Trace;

/**
 * Reads the machine out of a boot, in one pass over its lines. Made once for a family and safe to
 * use from many threads.
 *
 * <p>Lines of devices name them by their place on the bus before they say what they are, so those
 * have one name space, and their sort is told at the end by their class. A thing may be named in
 * several ways: the family's rules for names make one of them, and a name that was shortened to the
 * width of a screen is taken for the whole one that it fits.
 */
public final class MachineReader {
  /** Longest message that is read, in characters; what follows is left out. */
  private static final int LONGEST_MESSAGE = 4_000;

  private static final int MOST_IN_A_LINE = 32;
  private static final int MOST_THINGS = 4_000;
  private static final int MOST_WISHES = 200;
  private static final Pattern APART = Pattern.known("[\\s,<>]+");

  private final List<FactLine> facts;
  private final List<DeviceClass> classes;
  private final Names names;
  private final PatternSet patterns;

  /** A reader for the boots of a family. */
  public MachineReader(Family family) {
    this.facts = family.facts().lines();
    this.classes = family.facts().classes();
    this.names = new Names(family.facts().names());
    this.patterns = new PatternSet(facts.stream().map(FactLine::line).toList());
  }

  /** A message as far as anything is looked for in it. */
  public static String bounded(String message) {
    return message.length() > LONGEST_MESSAGE ? message.substring(0, LONGEST_MESSAGE) : message;
  }

  /** Reads one boot. */
  public Machine read(Boot boot, Trace trace) {
    Gathering gathering = new Gathering();
    List<LogLine> lines = boot.lines();
    for (int i = 0; i < lines.size(); i++) {
      LogLine line = lines.get(i);
      String message = bounded(line.message());
      int index = i;
      patterns.candidates(
          message,
          boot.mayBeTyped(),
          (pattern, place) -> gathering.take(facts.get(place), pattern, message, index, line));
    }
    return gathering.machine(boot, trace);
  }

  /** What one boot's lines have said so far. */
  private final class Gathering {
    private final Map<ThingSort, Map<String, Draft>> things = new EnumMap<>(ThingSort.class);
    private final Map<String, ThingSort> toldSort = new LinkedHashMap<>();
    private final Map<Draft, WishKind> wishes = new LinkedHashMap<>();
    private final UnitDrafts units = new UnitDrafts(names);
    private int count;

    void take(FactLine fact, Pattern pattern, String message, int index, LogLine line) {
      int from = 0;
      for (int times = 0; times < MOST_IN_A_LINE && from <= message.length(); times++) {
        Optional<Pattern.Match> match = pattern.find(message, from);
        if (match.isEmpty() || (times == 0 && !fact.fits(message))) {
          return;
        }
        if (fact.each().isEmpty()) {
          note(fact, match.get().values(), index, line);
        } else {
          for (String piece : pieces(match.get().values().getOrDefault(fact.each(), ""))) {
            Map<String, String> values = new LinkedHashMap<>(match.get().values());
            values.put("each", piece);
            note(fact, values, index, line);
          }
        }
        from = Math.max(match.get().end(), from + 1);
      }
    }

    private static List<String> pieces(String text) {
      List<String> pieces = new ArrayList<>();
      int from = 0;
      while (from < text.length() && pieces.size() < MOST_IN_A_LINE) {
        Optional<Pattern.Match> gap = APART.find(text, from);
        int end = gap.map(Pattern.Match::start).orElse(text.length());
        if (end > from) {
          pieces.add(text.substring(from, end));
        }
        from = gap.map(Pattern.Match::end).orElse(text.length());
      }
      return pieces;
    }

    private void note(FactLine fact, Map<String, String> caught, int index, LogLine line) {
      Map<String, String> values = new LinkedHashMap<>(caught);
      fact.with().forEach((key, text) -> values.put(key, Template.fill(text, caught)));
      String name = Template.fill(fact.name(), values);
      String on = names.usual(Template.fill(fact.on(), values));
      Mention mention =
          new Mention(index, line.number(), line.text(), fact.id(), fact.state(), values);
      if (fact.wish().isPresent()) {
        wish(fact.wish().get(), names.usual(name)).note(mention, on, values);
      } else if (!name.isBlank()) {
        ThingSort sort = fact.thing().orElse(ThingSort.DEVICE);
        thing(sort, name).ifPresent(draft -> draft.note(mention, on, values));
      }
    }

    private Optional<Draft> thing(ThingSort sort, String text) {
      if (sort == ThingSort.UNIT) {
        return units.of(text);
      }
      String name = names.usual(text);
      if (sort.isOnBus() && sort != ThingSort.DEVICE) {
        toldSort.putIfAbsent(name, sort);
      }
      Map<String, Draft> of =
          things.computeIfAbsent(
              sort.isOnBus() ? ThingSort.DEVICE : sort, k -> new LinkedHashMap<>());
      Draft known = of.get(name);
      if (known == null && count < MOST_THINGS) {
        known = new Draft(name);
        of.put(name, known);
        count++;
      }
      return Optional.ofNullable(known);
    }

    /**
     * The wish of that name, whatever it was called for at first: the device that a ramdisk gave up
     * is the root that the command line names. A line that names none speaks of the one of its
     * kind.
     */
    private Draft wish(WishKind kind, String name) {
      for (Map.Entry<Draft, WishKind> each : wishes.entrySet()) {
        Draft draft = each.getKey();
        boolean sameName = !name.isEmpty() && Names.same(name, draft.name());
        boolean unnamed = name.isEmpty() && each.getValue() == kind;
        boolean nowNamed =
            draft.name().isEmpty()
                && !name.isEmpty()
                && (each.getValue() == kind || isGivenUpRoot(each) && kind == WishKind.VOLUME);
        boolean several = kind == WishKind.CONSOLE;
        if ((sameName || unnamed || nowNamed) && (!several || sameName)) {
          if (nowNamed || (sameName && Names.isCut(draft.name()))) {
            draft.rename(name);
          }
          return draft;
        }
      }
      Draft draft = new Draft(name);
      if (wishes.size() < MOST_WISHES) {
        wishes.put(draft, kind);
      }
      return draft;
    }

    /** A root that was given up without a name: the device that is named next is the one. */
    private static boolean isGivenUpRoot(Map.Entry<Draft, WishKind> wish) {
      return wish.getValue() == WishKind.ROOT && wish.getKey().state() == ThingState.FAILED;
    }

    Machine machine(Boot boot, Trace trace) {
      List<Thing> all = new ArrayList<>();
      things.forEach(
          (sort, drafts) -> drafts.values().forEach(draft -> all.add(finished(sort, draft))));
      List<Thing> unitThings =
          units.all().stream().map(draft -> draft.thing(ThingSort.UNIT, "")).toList();
      all.addAll(unitThings);
      List<Wish> asked = new ArrayList<>();
      wishes.forEach((draft, kind) -> asked.add(draft.wish(kind)));
      return new Machine(boot, trace, all, asked, Waiting.of(unitThings, trace));
    }

    private Thing finished(ThingSort sort, Draft draft) {
      if (sort != ThingSort.DEVICE) {
        return draft.thing(sort, "");
      }
      String code = draft.values().getOrDefault("class", "");
      Optional<DeviceClass> known =
          classes.stream()
              .filter(c -> !code.isEmpty() && code.startsWith(c.code()))
              .max(java.util.Comparator.comparingInt(c -> c.code().length()));
      ThingSort told = toldSort.getOrDefault(draft.name(), ThingSort.DEVICE);
      known.ifPresent(
          c -> {
            draft.values().put("disks", c.disks() ? "yes" : "");
            draft.values().put("drivers", String.join(" ", c.drivers()));
          });
      return draft.thing(
          known.map(DeviceClass::sort).orElse(told), known.map(DeviceClass::title).orElse(""));
    }
  }
}
