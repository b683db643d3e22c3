package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.SignForm;
import standstill.log.LogLine;
import standstill.mine.Candidate;
import standstill.mine.Miner;
import standstill.report.Diagnoser;
import standstill.report.Sighting;
import standstill.score.LabelledLog;
import standstill.store.BaseFolder;
import standstill.store.BootFolder;
import standstill.text.Pattern;

/**
 * Takes faults out of the base and looks where their own lines come in the list that is made of
 * their labelled boots. A fault counts only where it alone explains a line.
 */
class ProposeOnBootsTest {
  private static final Path KB = Path.of("kb");

  @Test
  void theLineOfAHiddenFaultIsMostlyAmongTheFirstFive() throws Exception {
    Base base = BaseFolder.read(KB).base();
    Diagnoser whole = new Diagnoser(base);
    List<List<String>> healthy = HealthyBoots.beside(Optional.of(KB), whole);
    Map<String, List<LabelledLog>> byFault = new TreeMap<>();
    for (LabelledLog log : BootFolder.read(KB.resolve("boots")).logs()) {
      if (base.fault(log.label().label()).isPresent()) {
        byFault.computeIfAbsent(log.label().label(), id -> new ArrayList<>()).add(log);
      }
    }
    int faults = 0;
    List<String> missed = new ArrayList<>();
    for (Map.Entry<String, List<LabelledLog>> entry : byFault.entrySet()) {
      Fault fault = base.fault(entry.getKey()).orElseThrow();
      Base fewer = base.without(fault.id());
      if (!aloneExplains(fault, fewer, entry.getValue(), whole)) {
        continue;
      }
      faults++;
      Miner miner = new Miner();
      new Diagnosed(new Diagnoser(fewer)).strays(entry.getValue(), miner);
      List<Candidate> first = miner.candidates(1, healthy).stream().limit(5).toList();
      if (first.stream()
          .flatMap(candidate -> candidate.examples().stream())
          .noneMatch(stray -> signOf(fault).test(stray.message()))) {
        missed.add(fault.id());
      }
    }
    assertTrue(faults >= 10, "only " + faults + " faults could be hidden");
    assertTrue(missed.size() * 10 <= faults, missed + " of " + faults);
  }

  private record Diagnosed(Diagnoser diagnoser) {
    void strays(List<LabelledLog> logs, Miner miner) {
      for (LabelledLog log : logs) {
        sight(log).ifPresent(s -> UnsolvedLogs.strays(log.label().name(), s).forEach(miner::add));
      }
    }

    Optional<Sighting> sight(LabelledLog log) {
      return diagnoser.sight(diagnoser.read(log.bytes()), 0);
    }
  }

  private static boolean aloneExplains(
      Fault fault, Base fewer, List<LabelledLog> logs, Diagnoser whole) {
    Predicate<String> own = signOf(fault);
    List<Pattern> others = new ArrayList<>();
    fewer.faults().forEach(other -> others.addAll(patterns(other)));
    fewer.trails().forEach(trail -> trail.signs().forEach(sign -> others.add(sign.line())));
    fewer.families().forEach(f -> f.milestones().forEach(m -> others.add(m.line())));
    return logs.stream()
        .flatMap(log -> new Diagnosed(whole).sight(log).stream())
        .flatMap(sighting -> sighting.boot().lines().stream())
        .map(LogLine::message)
        .filter(own)
        .distinct()
        .limit(20)
        .anyMatch(message -> others.stream().noneMatch(pattern -> pattern.foundIn(message)));
  }

  private static List<Pattern> patterns(Fault fault) {
    return fault.signs().stream()
        .flatMap(
            s ->
                s.form() instanceof SignForm.OnLine on
                    ? Optional.of(on.line()).stream()
                    : Optional.<Pattern>empty().stream())
        .toList();
  }

  private static Predicate<String> signOf(Fault fault) {
    List<Pattern> patterns = patterns(fault);
    return message -> patterns.stream().anyMatch(pattern -> pattern.foundIn(message));
  }
}
