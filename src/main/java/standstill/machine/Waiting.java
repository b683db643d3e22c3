package standstill.machine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.base.ThingState;
import standstill.trace.Trace;

/**
 * Who waits for whom among the units of a boot.
 *
 * <p>A log says it in two ways. When a unit fails, the ones that need it are named as failed "for a
 * dependency" right after it: those hang behind it. And a unit that was begun has a job that runs
 * until it is ready or has failed. What holds a boot is a unit with such a job that hangs behind no
 * other one; a boot that has come to its end is held by none.
 *
 * @param behind name of a unit to the name of the one that it hangs behind
 * @param unfinished units that were begun and never got ready or failed, and hang behind no other;
 *     longest waiting first
 * @param longest seconds for which the longest job of the boot was seen to run, as it says itself
 */
public record Waiting(Map<String, String> behind, List<Thing> unfinished, int longest) {
  /** Lines near the end in which a running job still counts as running. */
  private static final int STILL_RUNNING = 40;

  public Waiting {
    behind = Collections.unmodifiableMap(new LinkedHashMap<>(behind));
    unfinished = List.copyOf(unfinished);
  }

  static Waiting of(List<Thing> units, Trace trace) {
    Map<String, String> behind = behind(units);
    List<Thing> open = new ArrayList<>();
    int longest = 0;
    for (Thing unit : units) {
      longest = Math.max(longest, longestOf(unit));
      if (unit.state() == ThingState.STARTING && !behind.containsKey(unit.name())) {
        open.add(unit);
      }
    }
    open.sort(Comparator.comparingInt(Waiting::waited).reversed());
    return new Waiting(behind, open, longest);
  }

  /** Each unit that failed for a dependency, with the last one that failed of itself above it. */
  private static Map<String, String> behind(List<Thing> units) {
    record At(int index, int order, Thing unit, Mention mention) {}
    List<At> failures = new ArrayList<>();
    int order = 0;
    for (Thing unit : units) {
      for (Mention mention : unit.mentions()) {
        if (mention.state() == ThingState.FAILED) {
          failures.add(new At(mention.index(), order++, unit, mention));
        }
      }
    }
    failures.sort(Comparator.comparingInt(At::index).thenComparingInt(At::order));
    Map<String, String> behind = new LinkedHashMap<>();
    Optional<Thing> first = Optional.empty();
    for (At each : failures) {
      if (!isBehind(each.mention())) {
        first = Optional.of(each.unit());
      } else if (first.isPresent() && !first.get().name().equals(each.unit().name())) {
        behind.putIfAbsent(each.unit().name(), first.get().name());
      } else {
        behind.putIfAbsent(each.unit().name(), "");
      }
    }
    return behind;
  }

  static boolean isBehind(Mention mention) {
    return "dependency".equals(mention.values().get("why"));
  }

  /** Names of the units that hang behind one, over any number of links. */
  public Set<String> hangBehind(String name) {
    Set<String> names = new LinkedHashSet<>();
    boolean more = true;
    while (more) {
      more = false;
      for (Map.Entry<String, String> each : behind.entrySet()) {
        boolean follows = each.getValue().equals(name) || names.contains(each.getValue());
        more |= follows && names.add(each.getKey());
      }
    }
    return names;
  }

  /**
   * The units that hold the boot: those whose jobs are still shown running in its last lines. One
   * that was only begun may have been done right after the paste ends. None when the boot has come
   * to its end, or was given up for a shell.
   */
  public List<Thing> holders(Trace trace) {
    boolean gaveUp =
        trace.milestones().stream().anyMatch(r -> r.milestone().proves() == Milestone.Proves.STOPS);
    if (trace.stage() == Stage.DONE || trace.stageAt().isEmpty() || gaveUp) {
      return List.of();
    }
    int tail = trace.stageAt().size() - STILL_RUNNING;
    return unfinished.stream().filter(u -> hasJob(u) && u.last().index() >= tail).toList();
  }

  private static boolean hasJob(Thing unit) {
    return unit.mentions().stream().anyMatch(m -> m.values().containsKey("waited"));
  }

  /** Seconds that a unit's job had run when it was last shown. */
  static int waited(Thing unit) {
    return seconds(unit.value("waited")).orElse(0);
  }

  private static int longestOf(Thing unit) {
    return unit.mentions().stream()
        .mapToInt(m -> seconds(m.values().getOrDefault("waited", "")).orElse(0))
        .max()
        .orElse(0);
  }

  /** Seconds of a span such as {@code 1min 30s} or {@code 2h 3min}. */
  static OptionalInt seconds(String span) {
    int total = 0;
    int number = -1;
    StringBuilder unit = new StringBuilder();
    boolean any = false;
    for (int i = 0; i <= span.length(); i++) {
      char c = i < span.length() ? span.charAt(i) : ' ';
      boolean digit = c >= '0' && c <= '9';
      if ((digit || c == ' ') && number >= 0 && unit.length() > 0) {
        int each = inSeconds(unit.toString());
        if (each < 0) {
          return OptionalInt.empty();
        }
        total += number * each;
        any = true;
        number = -1;
        unit.setLength(0);
      }
      if (digit) {
        number = Math.min(100_000, Math.max(0, number) * 10 + (c - '0'));
      } else if (c != ' ') {
        unit.append(c);
      }
    }
    return any ? OptionalInt.of(total) : OptionalInt.empty();
  }

  private static int inSeconds(String unit) {
    return switch (unit) {
      case "ms", "us" -> 0;
      case "s" -> 1;
      case "min" -> 60;
      case "h" -> 3_600;
      case "d", "day", "days" -> 86_400;
      default -> -1;
    };
  }
}
