package standstill.base.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import standstill.text.Pattern;
import standstill.text.Position;

/**
 * One map of a file, read key by key. It has been held to its declaration as a whole before, so
 * that one run reports all that is wrong; a read of something wrong returns something harmless and
 * reports nothing again.
 */
final class Fields {
  private final Sink sink;
  private final MappingNode node;
  private final Value.Keyed declared;
  private final Map<String, NodeTuple> tuples = new LinkedHashMap<>();

  private Fields(Sink sink, Node node, Value.Keyed declared) {
    this.sink = sink;
    this.node = node instanceof MappingNode mapping ? mapping : empty(node);
    this.declared = declared;
    for (NodeTuple tuple : this.node.getValue()) {
      tuples.put(((ScalarNode) tuple.getKeyNode()).getValue(), tuple);
    }
  }

  private static MappingNode empty(Node at) {
    return new MappingNode(
        Tag.MAP, true, List.of(), at.getStartMark(), at.getEndMark(), FlowStyle.BLOCK);
  }

  /** The map of a file; empty when the text is not YAML, and the sink then knows why. */
  static Optional<Fields> root(Sink sink, Value.Keyed declared) {
    Optional<Node> node = new Nodes(sink).compose();
    node.ifPresent(n -> declared.check(sink.stem(), n, sink));
    return node.map(n -> new Fields(sink, n, declared));
  }

  /** The maps of a file that is a list of them. */
  static List<Fields> list(Sink sink, ListOf declared) {
    Optional<Node> node = new Nodes(sink).compose();
    node.ifPresent(n -> declared.check(sink.stem(), n, sink));
    return node.map(n -> items(sink, n, declared)).orElse(List.of());
  }

  private static List<Fields> items(Sink sink, Node list, ListOf declared) {
    List<Fields> all = new ArrayList<>();
    if (list instanceof SequenceNode sequence) {
      sequence.getValue().forEach(n -> all.add(new Fields(sink, n, keyed(declared.each()))));
    }
    return all;
  }

  /** A list of texts and maps, mixed. */
  List<Item> mixed(String key) {
    List<Item> all = new ArrayList<>();
    if (value(key) instanceof SequenceNode sequence
        && declared.under(key, node) instanceof ListOf list) {
      for (Node item : sequence.getValue()) {
        Fields fields = new Fields(sink, item, keyed(list.each()));
        all.add(new Item(item instanceof ScalarNode s ? Scalars.read(s) : "", fields));
      }
    }
    return all;
  }

  /**
   * An item of a mixed list.
   *
   * @param text empty when it is a map
   * @param map without keys when it is a text
   */
  record Item(String text, Fields map) {}

  private static Value.Keyed keyed(Value value) {
    if (value instanceof Value.Keyed keyed) {
      return keyed;
    }
    throw new IllegalArgumentException("no map is declared here");
  }

  Position position() {
    return sink.position(node.getStartMark());
  }

  /** Where the value of a key stands; the map's own place when it has none. */
  Position position(String key) {
    NodeTuple tuple = tuples.get(key);
    return tuple == null ? position() : sink.position(tuple.getValueNode().getStartMark());
  }

  boolean has(String key) {
    return value(key) != null;
  }

  Set<String> keys() {
    return tuples.keySet();
  }

  void error(String key, String message, String advice) {
    sink.error(position(key), message, advice);
  }

  /** The node under a key that is declared. */
  private @Nullable Node value(String key) {
    declared.under(key, node);
    NodeTuple tuple = tuples.get(key);
    return tuple == null ? null : tuple.getValueNode();
  }

  /** A text, or the empty one. */
  String text(String key) {
    return value(key) instanceof ScalarNode scalar ? Scalars.read(scalar) : "";
  }

  /** A whole number, or the default. */
  int number(String key, int otherwise) {
    try {
      return has(key) ? Integer.parseInt(text(key)) : otherwise;
    } catch (NumberFormatException e) {
      return otherwise;
    }
  }

  /** A number, or the default. */
  double decimal(String key, double otherwise) {
    try {
      return has(key) ? Double.parseDouble(text(key)) : otherwise;
    } catch (NumberFormatException e) {
      return otherwise;
    }
  }

  /** A list of texts; empty when the key is absent. */
  List<String> texts(String key) {
    List<String> all = new ArrayList<>();
    if (value(key) instanceof SequenceNode sequence) {
      for (Node item : sequence.getValue()) {
        if (item instanceof ScalarNode scalar) {
          all.add(Scalars.read(scalar));
        }
      }
    }
    return all;
  }

  /** A list of names of other things, whose places are noted. */
  List<String> names(String key, String kind) {
    if (value(key) instanceof SequenceNode sequence) {
      for (Node item : sequence.getValue()) {
        if (item instanceof ScalarNode scalar) {
          sink.mention(kind, Scalars.read(scalar), item.getStartMark());
        }
      }
    }
    return texts(key);
  }

  /** The name of another thing, whose place is noted. */
  String name(String key, String kind) {
    Node value = value(key);
    if (value != null) {
      sink.mention(kind, text(key), value.getStartMark());
    }
    return text(key);
  }

  /** The keys, where they are names of other things; their places are noted. */
  Set<String> keysAsNames(String kind) {
    tuples.forEach((name, tuple) -> sink.mention(kind, name, tuple.getKeyNode().getStartMark()));
    return tuples.keySet();
  }

  /** The maps in a list. */
  List<Fields> maps(String key) {
    Node value = value(key);
    return value != null && declared.under(key, node) instanceof ListOf list
        ? items(sink, value, list)
        : List.of();
  }

  /** The map under a key; one without keys when it is absent. */
  Fields map(String key) {
    Node value = value(key);
    return new Fields(sink, value == null ? empty(node) : value, keyed(declared.under(key, node)));
  }

  /** A regular expression; empty when it is absent or not RE2 syntax. */
  Optional<Pattern> pattern(String key) {
    try {
      String source = text(key);
      return source.isEmpty() ? Optional.empty() : Optional.of(Pattern.of(source));
    } catch (Pattern.SyntaxException e) {
      return Optional.empty();
    }
  }
}
