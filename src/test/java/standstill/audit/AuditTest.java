package standstill.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.audit.SmallBase.sign;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import standstill.base.yaml.BaseReader;
import standstill.base.yaml.Loaded;
import standstill.rank.Ranker;

class AuditTest {
  @Test
  void everyRuleHasItsOwnIdAndStandsInTheReference() throws Exception {
    List<String> ids = new ArrayList<>(Audit.rules().stream().map(Rule::id).toList());
    ids.add("files");
    assertEquals(ids.size(), new TreeSet<>(ids).size());
    String reference = Files.readString(Path.of("docs/reference/check.md"));
    for (String id : ids) {
      assertTrue(reference.contains("`" + id + "`"), id);
    }
  }

  @Test
  void findingsComeInTheOrderOfTheirPlacesWithTheirRules() throws Exception {
    SmallBase base =
        new SmallBase()
            .reviewed("2020-01-01")
            .fault(
                "b-thing",
                "often",
                "",
                sign("lamp \\d is dark", "usually", "rarely", "lamp a is dark"),
                sign("wick \\S+ is wet", "usually", "never", "wick b is wet"))
            .reviewed("2026-11-01")
            .check("a-check")
            .boot("nowhere", "x");
    List<Finding> findings = Audit.findings(base.load(), base.logs(), SmallBase.TODAY);
    assertEquals(
        List.of(
            "kb/boots/boot-0.yaml boot-labels",
            "kb/checks/a-check.yaml:1:5 unused",
            "kb/faults/kernel/b-thing.yaml:1:5 not-reviewed",
            "kb/faults/kernel/b-thing.yaml:10:5 sign-texts"),
        findings.stream().map(f -> f.problem().position() + " " + f.rule()).toList());
  }

  @Test
  void aBaseWithoutAScaleIsReportedAndNotWeighed() {
    Loaded none = BaseReader.read(List.of(), Ranker.MODEL_NUMBERS);
    assertEquals(
        List.of("files"),
        Audit.findings(none, List.of(), SmallBase.TODAY).stream().map(Finding::rule).toList());
  }

  @Test
  void onlyErrorsStandInTheWayOfUsingABase() throws Exception {
    SmallBase base =
        new SmallBase()
            .reviewed("2020-01-01")
            .fault(
                "one-thing",
                "often",
                "",
                sign("lamp \\S+ is dark", "usually", "rarely", "lamp a is dark"),
                sign("wick \\S+ is wet", "usually", "never", "wick b is wet"));
    assertEquals(List.of(), Audit.problems(base.load().base()));
  }
}
