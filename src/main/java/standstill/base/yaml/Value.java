package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What may stand under a key. Declared once, in {@link Shapes}: the readers are held to it, and the
 * schema for editors is written from it.
 */
interface Value {
  /** Leaves a problem at the place of everything that is not as declared. */
  void check(String key, Node node, Sink sink);

  /** The same demands in the words of JSON Schema, draft 2020-12. */
  ObjectNode schema();

  /** A value that has keys of its own, or lists such values. */
  interface Keyed extends Value {
    /** What may stand under one of its keys, in the map at this node. */
    Value under(String key, Node map);

    /** What it is called in messages. */
    String what();
  }
}
