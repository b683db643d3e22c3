package standstill.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import standstill.base.Statement;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.machine.Found;
import standstill.machine.Machine;
import standstill.machine.Mention;
import standstill.machine.Said;
import standstill.machine.Thing;
import standstill.machine.Wish;

/** The machine as JSON; the keys are described in {@code docs/reference/json.md}. */
public final class MachineJson {
  private static final int MOST_THINGS = 400;
  private static final int MOST_LINES = 12;

  private MachineJson() {}

  /** Writes a machine into a node. */
  public static void write(ObjectNode node, Machine machine) {
    node.put("summary", Picture.of(machine).summary());
    node.put("listsDevices", machine.listsDevices());
    node.put("devicesAreOver", machine.devicesAreOver());
    ArrayNode facts = node.putArray("facts");
    ArrayNode untold = node.putArray("untold");
    for (Statement statement : Statement.values()) {
      Said said = machine.says(statement);
      if (said.holds()) {
        fact(facts.addObject(), statement, said);
      } else if (said.verdict() == Said.Verdict.NOT_COVERED) {
        untold.add(statement.word());
      }
    }
    ArrayNode wishes = node.putArray("wishes");
    machine.wishes().stream()
        .filter(w -> w.kind() != WishKind.COMMAND_LINE)
        .forEach(wish -> wish(wishes.addObject(), wish));
    ArrayNode things = node.putArray("things");
    machine.things().stream()
        .filter(t -> t.sort() != ThingSort.UNIT || t.state() != ThingState.READY)
        .limit(MOST_THINGS)
        .forEach(thing -> thing(things.addObject(), machine, thing));
    ArrayNode holds = node.putArray("holdsBoot");
    machine.waiting().holders(machine.trace()).forEach(u -> holds.add(u.name()));
    ObjectNode behind = node.putObject("behind");
    machine.waiting().behind().forEach(behind::put);
  }

  private static void fact(ObjectNode node, Statement statement, Said said) {
    node.put("id", statement.word());
    node.put("says", statement.title());
    ArrayNode all = node.putArray("found");
    for (Found found : said.found()) {
      ObjectNode each = all.addObject();
      values(each.putObject("values"), found.values());
      lines(each.putArray("lines"), found.lines());
    }
  }

  private static void wish(ObjectNode node, Wish wish) {
    node.put("kind", wish.kind().word());
    node.put("name", wish.name());
    node.put("state", wish.state().word());
    lines(node.putArray("lines"), wish.mentions());
  }

  private static void thing(ObjectNode node, Machine machine, Thing thing) {
    node.put("sort", thing.sort().word());
    node.put("name", thing.name());
    node.put("title", thing.title());
    node.put("on", thing.on());
    node.put("state", thing.state().word());
    node.put("withoutDriver", machine.lacksDriver(thing));
    values(node.putObject("values"), thing.values());
    lines(node.putArray("lines"), thing.mentions());
  }

  private static void values(ObjectNode node, Map<String, String> values) {
    values.forEach(
        (key, value) -> {
          if (!value.isEmpty()) {
            node.put(key, value);
          }
        });
  }

  private static void lines(ArrayNode array, List<Mention> mentions) {
    mentions.stream().mapToInt(Mention::line).distinct().limit(MOST_LINES).forEach(array::add);
  }
}
