package standstill.disguise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import standstill.log.BootLog;
import standstill.rank.Cause;
import standstill.rank.Ranking;
import standstill.report.Diagnoser;
import standstill.report.Report;
import standstill.score.LabelledLog;
import standstill.store.BaseFolder;
import standstill.store.BootFolder;

/** A helper who gets the disguised log must be told the same as the person whose log it is. */
class SameDiagnosisTest {
  private static final Path KB = Path.of("kb");
  private static final double ROUNDING = 0.005;

  @Test
  void theDiagnosisOfADisguisedBootIsThatOfTheBoot() throws Exception {
    Diagnoser diagnoser = new Diagnoser(BaseFolder.read(KB).base());
    List<LabelledLog> logs = BootFolder.read(KB.resolve("boots")).logs();
    assertTrue(logs.size() > 150, "only " + logs.size() + " boots were read");
    List<String> changed = new ArrayList<>();
    for (LabelledLog log : logs) {
      BootLog plain = diagnoser.read(log.bytes());
      List<String> lines = Disguise.of(plain).apply(plain.rawLines());
      assertEquals(plain.rawLines().size(), lines.size());
      Report before = diagnoser.diagnose(plain, 0);
      Report after =
          diagnoser.diagnose((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
      String difference = difference(before, after);
      if (!difference.isEmpty()) {
        changed.add(log.label().name() + ": " + difference);
      }
    }
    assertEquals(List.of(), changed);
  }

  private static String difference(Report before, Report after) {
    if (!before.verdict().equals(after.verdict())) {
      return before.verdict() + " became " + after.verdict();
    }
    Optional<Ranking> was = before.diagnosis().map(Report.Diagnosis::ranking);
    Optional<Ranking> is = after.diagnosis().map(Report.Diagnosis::ranking);
    List<Cause> first = was.map(Ranking::causes).orElse(List.of());
    List<Cause> second = is.map(Ranking::causes).orElse(List.of());
    if (!first.isEmpty() && !first.get(0).fault().id().equals(second.get(0).fault().id())) {
      return first.get(0).fault().id() + " became " + second.get(0).fault().id();
    }
    for (int i = 0; i < Math.min(3, first.size()); i++) {
      double now = probability(second, first.get(i).fault().id());
      if (Math.abs(first.get(i).probability() - now) > ROUNDING) {
        return first.get(i).fault().id() + " " + first.get(i).probability() + " became " + now;
      }
    }
    return "";
  }

  private static double probability(List<Cause> causes, String id) {
    return causes.stream()
        .filter(c -> c.fault().id().equals(id))
        .mapToDouble(Cause::probability)
        .findFirst()
        .orElse(0);
  }
}
