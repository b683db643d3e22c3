package standstill.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.text.Problem;

/** What {@code check} found, for programs. */
final class CheckReport {
  private CheckReport() {}

  static String json(Base base, List<Finding> findings) {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode root = mapper.createObjectNode();
    root.put("faults", base.faults().size());
    root.put("checks", base.checks().size());
    root.put("symptoms", base.symptoms().size());
    root.put("trails", base.trails().size());
    root.put("walks", base.walks().size());
    root.put("errors", findings.stream().filter(f -> f.problem().isError()).count());
    root.put("warnings", findings.stream().filter(f -> !f.problem().isError()).count());
    ArrayNode list = root.putArray("problems");
    for (Finding finding : findings) {
      Problem problem = finding.problem();
      ObjectNode each = list.addObject();
      each.put("file", problem.position().file());
      each.put("line", problem.position().line());
      each.put("column", problem.position().column());
      each.put("severity", problem.isError() ? "error" : "warning");
      each.put("rule", finding.rule());
      each.put("message", problem.message());
      each.put("advice", problem.advice());
    }
    try {
      return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
