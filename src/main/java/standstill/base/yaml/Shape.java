package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A map with known keys.
 *
 * @param what what it is called in messages, with its article
 * @param keys those that it may have
 * @param exactlyOne keys of which one has to be there and no other; empty when there is no such
 *     choice
 */
record Shape(String what, List<Key> keys, List<String> exactlyOne) implements Value.Keyed {
  Shape {
    keys = List.copyOf(keys);
    exactlyOne = List.copyOf(exactlyOne);
  }

  /**
   * A key.
   *
   * @param name as it is written
   * @param required whether it has to be there
   * @param value what may stand under it
   * @param means what it says, for editors
   */
  record Key(String name, boolean required, Value value, String means) {}

  static Shape of(String what, Key... keys) {
    return new Shape(what, List.of(keys), List.of());
  }

  /** A key that has to be there. */
  static Key must(String name, Value value, String means) {
    return new Key(name, true, value, means);
  }

  /** A key that may be left out. */
  static Key may(String name, Value value, String means) {
    return new Key(name, false, value, means);
  }

  /** The same, of which exactly one of these keys has to be there. */
  Shape withExactlyOne(List<String> names) {
    return new Shape(what, keys, names);
  }

  @Override
  public Value under(String key, Node map) {
    return keys.stream()
        .filter(k -> k.name().equals(key))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no key '" + key + "' in " + what))
        .value();
  }

  @Override
  public void check(String key, Node node, Sink sink) {
    if (!(node instanceof MappingNode mapping)) {
      sink.error(node.getStartMark(), what + " is not a map", "write key: value pairs");
      return;
    }
    List<String> names = keys.stream().map(Key::name).toList();
    List<String> found =
        mapping.getValue().stream().map(t -> ((ScalarNode) t.getKeyNode()).getValue()).toList();
    for (NodeTuple tuple : mapping.getValue()) {
      String name = ((ScalarNode) tuple.getKeyNode()).getValue();
      if (names.contains(name)) {
        under(name, node).check(name, tuple.getValueNode(), sink);
      } else {
        sink.error(
            tuple.getKeyNode().getStartMark(),
            "unknown key '" + name + "' in " + what,
            Words.advice(name, names));
      }
    }
    for (Key each : keys) {
      if (each.required() && !found.contains(each.name())) {
        sink.error(node.getStartMark(), "key '" + each.name() + "' is missing in " + what, "");
      }
    }
    List<String> chosen = exactlyOne.stream().filter(found::contains).toList();
    if (!exactlyOne.isEmpty() && chosen.size() != 1) {
      sink.error(
          node.getStartMark(),
          chosen.isEmpty()
              ? what + " has none of the keys of which it needs one"
              : what
                  + " has "
                  + chosen.stream().map(c -> "'" + c + "'").collect(Collectors.joining(" and ")),
          "give it exactly one of: " + String.join(", ", exactlyOne));
    }
  }

  @Override
  public ObjectNode schema() {
    ObjectNode schema = JsonNodeFactory.instance.objectNode().put("type", "object");
    ObjectNode properties = schema.putObject("properties");
    ArrayNode required = schema.putArray("required");
    for (Key key : keys) {
      properties.set(key.name(), key.value().schema().put("description", key.means()));
      if (key.required()) {
        required.add(key.name());
      }
    }
    schema.put("additionalProperties", false);
    if (!exactlyOne.isEmpty()) {
      ArrayNode choice = schema.putArray("oneOf");
      exactlyOne.forEach(name -> choice.addObject().putArray("required").add(name));
    }
    return schema;
  }
}
