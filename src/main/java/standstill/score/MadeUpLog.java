package standstill.score;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.match.Hit;
import standstill.match.Matches;
import standstill.match.Seen;
import standstill.trace.Trace;

/**
 * What the matcher would report of a log, drawn from the base instead of read from a text.
 *
 * <p>Each event of the fault is seen with the chance of its most telling sign, each consequence
 * follows with the model's chance and shows its own events, and events of other faults up to the
 * stage of the stop are seen with the chance of their words. Half of the logs show the boot from
 * its beginning, the others are an end only. Limits: real logs are noisier than that, because signs
 * of related faults come together.
 */
final class MadeUpLog {
  private static final int LINES = 400;
  private static final double WHOLE = 0.5;

  private final Base base;
  private final Fault fault;
  private final Stage stop;
  private final Random random;
  private final List<Seen> seen = new ArrayList<>();

  private MadeUpLog(Base base, Fault fault, Stage stop, Random random) {
    this.base = base;
    this.fault = fault;
    this.stop = stop;
    this.random = random;
  }

  /** Trace and matches; empty when the boot stopped before the kernel and printed nothing. */
  static Optional<Case.Seen> draw(
      Base base, String family, Fault fault, Stage stop, Random random) {
    MadeUpLog log = new MadeUpLog(base, fault, stop, random);
    return log.drawn(family);
  }

  private Optional<Case.Seen> drawn(String family) {
    double link = base.scale().model("leads-to");
    show(fault);
    for (String id : fault.leadsTo()) {
      if (random.nextDouble() < link) {
        base.fault(id).ifPresent(this::show);
      }
    }
    boolean kernel = stop.ordinal() >= Stage.KERNEL.ordinal();
    if (seen.isEmpty() && !kernel) {
      return Optional.empty();
    }
    noise(family);
    Set<Stage> stages = EnumSet.noneOf(Stage.class);
    for (Stage stage : Stage.values()) {
      if (stage.ordinal() >= Math.min(Stage.KERNEL.ordinal(), stop.ordinal())
          && stage.ordinal() <= stop.ordinal()) {
        stages.add(stage);
      }
    }
    boolean whole = random.nextDouble() < WHOLE;
    List<Stage> stageAt = new ArrayList<>();
    List<Stage> passed = new ArrayList<>(stages);
    for (int i = 0; i < LINES; i++) {
      stageAt.add(passed.get(Math.min(passed.size() - 1, i * passed.size() / (LINES * 3 / 4))));
    }
    Trace trace =
        new Trace(
            stop,
            kernel,
            List.of(),
            stages,
            whole ? stages : Set.of(),
            List.of(),
            List.of(),
            LINES,
            stageAt,
            OptionalInt.empty(),
            false);
    return Optional.of(new Case.Seen(trace, new Matches(seen, List.of(), List.of(), new BitSet())));
  }

  /** Signs of other faults; what belongs after the stop can't have been printed. */
  private void noise(String family) {
    Set<String> own = new HashSet<>();
    seen.forEach(s -> own.add(s.fault().id()));
    for (Fault other : base.faultsOf(family)) {
      if (!own.contains(other.id()) && !other.stage().isAfter(stop)) {
        for (List<Sign> event : events(other)) {
          Sign sign = event.get(random.nextInt(event.size()));
          if (random.nextDouble() < sign.elsewhere().value()) {
            add(other, sign, random.nextInt(LINES));
          }
        }
      }
    }
  }

  private static Collection<List<Sign>> events(Fault fault) {
    Map<String, List<Sign>> events = new LinkedHashMap<>();
    for (Sign sign : fault.signs()) {
      events.computeIfAbsent(sign.event(), k -> new ArrayList<>()).add(sign);
    }
    return events.values();
  }

  private void show(Fault shown) {
    for (List<Sign> event : events(shown)) {
      double best = event.stream().mapToDouble(s -> s.shows().value()).max().orElse(0);
      if (random.nextDouble() < best) {
        double sum = event.stream().mapToDouble(s -> s.shows().value()).sum();
        double at = random.nextDouble() * sum;
        Sign chosen = event.get(event.size() - 1);
        for (Sign sign : event) {
          at -= sign.shows().value();
          if (at < 0) {
            chosen = sign;
            break;
          }
        }
        add(shown, chosen, LINES * 3 / 4 + random.nextInt(LINES / 4));
      }
    }
  }

  private void add(Fault of, Sign sign, int index) {
    boolean missing = sign.form() instanceof SignForm.Without;
    List<Hit> hits = missing ? List.of() : List.of(new Hit(index, index + 1, "", Map.of()));
    seen.add(new Seen(of, sign, hits, hits.size()));
  }
}
