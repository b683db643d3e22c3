package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;

/**
 * A plain text, or a map where there is more to say.
 *
 * @param map the map's keys
 */
record TextOr(Shape map) implements Value.Keyed {
  @Override
  public String what() {
    return map.what();
  }

  @Override
  public Value under(String key, Node node) {
    return map.under(key, node);
  }

  @Override
  public void check(String key, Node node, Sink sink) {
    if (node instanceof MappingNode) {
      map.check(key, node, sink);
    } else {
      Scalars.text().check(key, node, sink);
    }
  }

  @Override
  public ObjectNode schema() {
    ObjectNode schema = JsonNodeFactory.instance.objectNode();
    schema.putArray("anyOf").add(Scalars.text().schema()).add(map.schema());
    return schema;
  }
}
