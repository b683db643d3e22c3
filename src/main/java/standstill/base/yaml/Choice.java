package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * One of two shapes, the second of which may be a choice again; a key that only the first one has
 * tells which.
 *
 * @param key the key that tells
 * @param with the shape with it
 * @param without the shape without it
 */
record Choice(String key, Shape with, Value.Keyed without) implements Value.Keyed {
  private Value.Keyed chosen(Node node) {
    boolean has =
        node instanceof MappingNode mapping
            && mapping.getValue().stream()
                .anyMatch(t -> ((ScalarNode) t.getKeyNode()).getValue().equals(key));
    return has ? with : without;
  }

  @Override
  public String what() {
    return without.what();
  }

  @Override
  public Value under(String name, Node map) {
    return chosen(map).under(name, map);
  }

  @Override
  public void check(String name, Node node, Sink sink) {
    chosen(node).check(name, node, sink);
  }

  @Override
  public ObjectNode schema() {
    ObjectNode schema = JsonNodeFactory.instance.objectNode().put("type", "object");
    schema.putObject("if").putArray("required").add(key);
    schema.set("then", with.schema());
    schema.set("else", without.schema());
    return schema;
  }
}
