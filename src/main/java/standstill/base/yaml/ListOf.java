package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A list.
 *
 * @param each what its items are
 * @param least fewest items
 * @param most most items
 */
record ListOf(Value each, int least, int most) implements Value {
  /** A list that may be empty. */
  static ListOf any(Value each) {
    return new ListOf(each, 0, Integer.MAX_VALUE);
  }

  /** A list with something in it. */
  static ListOf some(Value each) {
    return new ListOf(each, 1, Integer.MAX_VALUE);
  }

  @Override
  public void check(String key, Node node, Sink sink) {
    if (!(node instanceof SequenceNode sequence)) {
      sink.error(
          node.getStartMark(),
          "'" + key + "' is not a list",
          "write [a, b] or one line with '- ' each");
      return;
    }
    int size = sequence.getValue().size();
    if (size == 0 && least > 0) {
      sink.error(node.getStartMark(), "'" + key + "' is empty", "");
    } else if (size < least || size > most) {
      sink.error(
          node.getStartMark(),
          "'" + key + "' has " + size + (size == 1 ? " entry" : " entries"),
          most == Integer.MAX_VALUE
              ? "allowed: " + least + " or more"
              : "allowed: " + least + " to " + most);
    }
    sequence.getValue().forEach(item -> each.check(key, item, sink));
  }

  @Override
  public ObjectNode schema() {
    ObjectNode schema = JsonNodeFactory.instance.objectNode().put("type", "array");
    if (least > 0) {
      schema.put("minItems", least);
    }
    if (most < Integer.MAX_VALUE) {
      schema.put("maxItems", most);
    }
    schema.set("items", each.schema());
    return schema;
  }
}
