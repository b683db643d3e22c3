package standstill.base.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import standstill.text.Pattern;
import standstill.text.Position;

/**
 * One map of a file, read key by key. Each read that fails leaves a problem and returns something
 * harmless, so that one run reports them all; {@link #done} reports the keys that nobody asked for.
 */
final class Fields {
  private final Sink sink;
  private final MappingNode node;
  private final String what;
  private final Map<String, NodeTuple> tuples = new LinkedHashMap<>();
  private final Set<String> asked = new LinkedHashSet<>();

  private Fields(Sink sink, MappingNode node, String what) {
    this.sink = sink;
    this.node = node;
    this.what = what;
    for (NodeTuple tuple : node.getValue()) {
      tuples.put(((ScalarNode) tuple.getKeyNode()).getValue(), tuple);
    }
  }

  /** The map at a node; an empty one, with a problem, when the node is something else. */
  static Fields of(Sink sink, Node node, String what) {
    if (node instanceof MappingNode mapping) {
      return new Fields(sink, mapping, what);
    }
    sink.error(node.getStartMark(), what + " is not a map", "write key: value pairs");
    return new Fields(
        sink,
        new MappingNode(
            org.yaml.snakeyaml.nodes.Tag.MAP,
            true,
            List.of(),
            node.getStartMark(),
            node.getEndMark(),
            org.yaml.snakeyaml.DumperOptions.FlowStyle.BLOCK),
        what);
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
    asked.add(key);
    return tuples.containsKey(key);
  }

  Set<String> keys() {
    return tuples.keySet();
  }

  void error(String key, String message, String advice) {
    sink.error(position(key), message, advice);
  }

  /** Reports keys that no read has asked for. */
  void done() {
    for (Map.Entry<String, NodeTuple> entry : tuples.entrySet()) {
      if (!asked.contains(entry.getKey())) {
        sink.error(
            entry.getValue().getKeyNode().getStartMark(),
            "unknown key '" + entry.getKey() + "' in " + what,
            Words.advice(entry.getKey(), asked));
      }
    }
  }

  private @Nullable Node value(String key, boolean required) {
    asked.add(key);
    NodeTuple tuple = tuples.get(key);
    if (tuple == null) {
      if (required) {
        sink.error(node.getStartMark(), "key '" + key + "' is missing in " + what, "");
      }
      return null;
    }
    return tuple.getValueNode();
  }

  /** A text that has to be there and not be blank. */
  String text(String key) {
    Node value = value(key, true);
    String text = value == null ? "" : scalar(key, value);
    if (value instanceof ScalarNode && text.isBlank()) {
      sink.error(value.getStartMark(), "'" + key + "' is empty", "");
    }
    return text;
  }

  /** A text, or the default when the key is absent. */
  String text(String key, String otherwise) {
    Node value = value(key, false);
    return value == null ? otherwise : scalar(key, value);
  }

  private String scalar(String key, Node value) {
    if (value instanceof ScalarNode scalar) {
      // Quotes keep blanks at the ends on purpose; block texts end in a line break that nobody
      // means.
      return quoted(scalar) ? scalar.getValue() : scalar.getValue().strip();
    }
    sink.error(value.getStartMark(), "'" + key + "' is not a text", "");
    return "";
  }

  private static boolean quoted(ScalarNode scalar) {
    return scalar.getScalarStyle() == ScalarStyle.SINGLE_QUOTED
        || scalar.getScalarStyle() == ScalarStyle.DOUBLE_QUOTED;
  }

  /** A whole number within bounds, or the default when the key is absent or wrong. */
  int number(String key, int otherwise, int least, int most) {
    Node value = value(key, false);
    if (value == null) {
      return otherwise;
    }
    try {
      int number = Integer.parseInt(scalar(key, value));
      if (number >= least && number <= most) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Reported below, together with numbers out of bounds.
    }
    sink.error(
        value.getStartMark(),
        "'" + key + "' is not a whole number from " + least + " to " + most,
        "");
    return otherwise;
  }

  /** A decimal number within bounds. */
  double decimal(String key, double least, double most) {
    Node value = value(key, true);
    if (value == null) {
      return least;
    }
    try {
      double number = Double.parseDouble(scalar(key, value));
      if (number >= least && number <= most) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Reported below, together with numbers out of bounds.
    }
    sink.error(
        value.getStartMark(), "'" + key + "' is not a number from " + least + " to " + most, "");
    return least;
  }

  /** A word out of a few. */
  Optional<String> word(String key, Collection<String> allowed) {
    Node value = value(key, true);
    return value == null ? Optional.empty() : word(key, value, allowed);
  }

  private Optional<String> word(String key, Node value, Collection<String> allowed) {
    String word = scalar(key, value);
    if (allowed.contains(word)) {
      return Optional.of(word);
    }
    if (value instanceof ScalarNode) {
      sink.error(
          value.getStartMark(),
          word.isEmpty() ? "'" + key + "' is empty" : "unknown word '" + word + "' for " + key,
          Words.advice(word, allowed));
    }
    return Optional.empty();
  }

  /** A list of texts; empty when the key is absent. */
  List<String> texts(String key, boolean required) {
    List<String> all = new ArrayList<>();
    for (Node item : items(key, required)) {
      String text = scalar(key, item);
      if (text.isBlank() && item instanceof ScalarNode) {
        sink.error(item.getStartMark(), "empty text in '" + key + "'", "");
      } else if (!text.isEmpty()) {
        all.add(text);
      }
    }
    return all;
  }

  /** A list of words out of a few. */
  List<String> words(String key, boolean required, Collection<String> allowed) {
    List<String> all = new ArrayList<>();
    for (Node item : items(key, required)) {
      word(key, item, allowed).ifPresent(all::add);
    }
    return all;
  }

  /** The maps in a list. */
  List<Fields> maps(String key, boolean required, String each) {
    List<Fields> all = new ArrayList<>();
    for (Node item : items(key, required)) {
      all.add(of(sink, item, each));
    }
    return all;
  }

  private List<Node> items(String key, boolean required) {
    Node value = value(key, required);
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof SequenceNode sequence)) {
      sink.error(
          value.getStartMark(),
          "'" + key + "' is not a list",
          "write [a, b] or one line with '- ' each");
      return List.of();
    }
    if (required && sequence.getValue().isEmpty()) {
      sink.error(value.getStartMark(), "'" + key + "' is empty", "");
    }
    return sequence.getValue();
  }

  /** The map under a key; empty when it is absent. */
  Optional<Fields> map(String key, boolean required) {
    Node value = value(key, required);
    return value == null ? Optional.empty() : Optional.of(of(sink, value, "'" + key + "'"));
  }

  /**
   * A regular expression; empty, with a problem at the place of the trouble, when it is not RE2
   * syntax.
   */
  Optional<Pattern> pattern(String key) {
    Node value = value(key, true);
    if (value == null) {
      return Optional.empty();
    }
    String source = scalar(key, value);
    if (source.isEmpty()) {
      if (value instanceof ScalarNode) {
        sink.error(value.getStartMark(), "'" + key + "' is empty", "write a pattern");
      }
      return Optional.empty();
    }
    try {
      return Optional.of(Pattern.of(source));
    } catch (Pattern.SyntaxException e) {
      Position start = sink.position(value.getStartMark());
      // Inside quotes the pattern's own offset is one to the right of the quote; a doubled quote
      // shifts it, rarely.
      int quote = value instanceof ScalarNode s && !s.isPlain() ? 1 : 0;
      boolean oneLine = value.getStartMark().getLine() == value.getEndMark().getLine();
      int column = oneLine ? start.column() + quote + e.offset() : start.column();
      sink.error(
          new Position(start.file(), start.line(), column),
          "pattern is not RE2 syntax: " + e.getMessage(),
          "look-around and back-references are not there; groups are (?P<name>...)");
      return Optional.empty();
    }
  }
}
