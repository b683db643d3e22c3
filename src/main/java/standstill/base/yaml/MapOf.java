package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A map from ids to values of one kind.
 *
 * @param what what it is called in messages
 * @param each what stands under each id
 */
record MapOf(String what, Value each) implements Value.Keyed {
  @Override
  public Value under(String key, Node map) {
    return each;
  }

  @Override
  public void check(String key, Node node, Sink sink) {
    if (!(node instanceof MappingNode mapping)) {
      sink.error(node.getStartMark(), what + " is not a map", "write key: value pairs");
      return;
    }
    if (mapping.getValue().isEmpty()) {
      sink.error(node.getStartMark(), "'" + key + "' is empty", "");
    }
    for (NodeTuple tuple : mapping.getValue()) {
      String id = ((ScalarNode) tuple.getKeyNode()).getValue();
      if (!Scalars.isId(id)) {
        sink.error(
            tuple.getKeyNode().getStartMark(),
            "'" + id + "' is not an id",
            "allowed: lower-case words joined by hyphens");
      }
      each.check(id, tuple.getValueNode(), sink);
    }
  }

  @Override
  public ObjectNode schema() {
    ObjectNode schema =
        JsonNodeFactory.instance.objectNode().put("type", "object").put("minProperties", 1);
    schema.set("propertyNames", Scalars.id().schema());
    schema.set("additionalProperties", each.schema());
    return schema;
  }
}
