package standstill.base.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * The text of one entry, of which single values can be read and written where they stand. All the
 * rest, comments and layout included, stays as it is. Immutable.
 *
 * <p>A path is keys and numbers from 0, joined by dots: {@code signs.0.line}. Every write is read
 * back: what doesn't come out as the value that was written is refused, so that no odd layout can
 * make a form damage a text.
 */
public final class EntryText {
  private static final int WIDEST = 110;

  private final String text;
  private final @Nullable Node root;

  private EntryText(String text, @Nullable Node root) {
    this.text = text;
    this.root = root;
  }

  /** The values of a text; none when it is not sound YAML. */
  public static EntryText of(String text) {
    Sink sink = new Sink(new BaseText("entry.yaml", "entry.yaml", text));
    return new EntryText(text, new Nodes(sink).compose().orElse(null));
  }

  /** Whether the text can be read at all. */
  public boolean isSound() {
    return root != null;
  }

  /** The whole text. */
  public String text() {
    return text;
  }

  /** A single value; empty when there is none at the path. */
  public Optional<String> value(String path) {
    return node(path) instanceof ScalarNode scalar
        ? Optional.of(
            scalar.getScalarStyle() == ScalarStyle.FOLDED
                    || scalar.getScalarStyle() == ScalarStyle.LITERAL
                ? scalar.getValue().strip()
                : scalar.getValue())
        : Optional.empty();
  }

  /** A list of single values; empty when there is none at the path. */
  public Optional<List<String>> values(String path) {
    if (!(node(path) instanceof SequenceNode sequence)) {
      return Optional.empty();
    }
    List<String> values = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      if (!(item instanceof ScalarNode scalar)) {
        return Optional.empty();
      }
      values.add(scalar.getValue());
    }
    return Optional.of(values);
  }

  /** How many items the list at a path has; 0 when there is no list. */
  public int size(String path) {
    return node(path) instanceof SequenceNode sequence ? sequence.getValue().size() : 0;
  }

  /** The line, from 1, on which a value stands; 0 when there is none. */
  public int line(String path) {
    Node node = node(path);
    return node == null ? 0 : node.getStartMark().getLine() + 1;
  }

  /** The text with a value written; empty when that can't be done at this path. */
  public Optional<EntryText> with(String path, String value) {
    String clean = value.replaceAll("\\s+", " ").strip();
    Node node = node(path);
    Optional<EntryText> changed = Optional.empty();
    if (node instanceof ScalarNode scalar) {
      int end = end(scalar);
      boolean block =
          scalar.getScalarStyle() == ScalarStyle.FOLDED
              || scalar.getScalarStyle() == ScalarStyle.LITERAL;
      String written =
          block || clean.length() > WIDEST && !inFlow(path)
              ? folded(clean, indent(path) + 2)
              : single(clean, scalar.getScalarStyle() == ScalarStyle.PLAIN);
      changed = replaced(scalar.getStartMark().getIndex(), end, written);
    } else if (node == null) {
      changed = inserted(path, single(clean, false));
    }
    return changed.filter(c -> c.value(path).equals(Optional.of(clean)));
  }

  /** The text with a list of values written; empty when that can't be done at this path. */
  public Optional<EntryText> with(String path, List<String> values) {
    Node node = node(path);
    Optional<EntryText> changed = Optional.empty();
    if (node instanceof SequenceNode sequence) {
      boolean plain =
          !sequence.getValue().isEmpty()
              && sequence.getValue().stream()
                  .allMatch(
                      n -> n instanceof ScalarNode s && s.getScalarStyle() == ScalarStyle.PLAIN);
      String flow = flow(values, plain);
      boolean fits = flow.length() <= WIDEST || values.isEmpty() || inFlow(path);
      String written =
          sequence.getFlowStyle() == FlowStyle.FLOW && fits || values.isEmpty()
              ? flow
              : block(values, plain, indent(path) + 2);
      int start = sequence.getStartMark().getIndex();
      if (sequence.getFlowStyle() == FlowStyle.BLOCK) {
        // A block list begins at its first dash; what stands between it and its key goes too.
        start = keyEnd(path);
        written = (written.startsWith("[") ? " " : "") + written;
      } else if (written.startsWith("\n")) {
        start = keyEnd(path);
      }
      changed = replaced(start, end(sequence), written);
    } else if (node == null && !values.isEmpty()) {
      changed = inserted(path, flow(values, false));
    }
    return changed.filter(c -> c.values(path).equals(Optional.of(values)));
  }

  /**
   * The text with an item, given as YAML from its first key on, behind the last of a block list.
   */
  public Optional<EntryText> withItem(String path, String yaml) {
    if (!(node(path) instanceof SequenceNode sequence)
        || sequence.getFlowStyle() != FlowStyle.BLOCK
        || sequence.getValue().isEmpty()) {
      return Optional.empty();
    }
    int column = sequence.getStartMark().getColumn();
    StringBuilder item = new StringBuilder();
    String first = "\n" + " ".repeat(column) + "- ";
    for (String line : yaml.strip().lines().toList()) {
      item.append(item.isEmpty() ? first : "\n" + " ".repeat(column + 2)).append(line);
    }
    int size = sequence.getValue().size();
    int at = end(sequence);
    return replaced(at, at, item.toString()).filter(c -> c.size(path) == size + 1);
  }

  private Optional<EntryText> replaced(int start, int end, String written) {
    EntryText changed =
        of(text.substring(0, offset(start)) + written + text.substring(offset(end)));
    return changed.isSound() ? Optional.of(changed) : Optional.empty();
  }

  /** Marks count code points, and strings count UTF-16 units. */
  private int offset(int codePoints) {
    return text.offsetByCodePoints(0, codePoints);
  }

  private Optional<EntryText> inserted(String path, String written) {
    int dot = path.lastIndexOf('.');
    Node parent = node(dot < 0 ? "" : path.substring(0, dot));
    if (!(parent instanceof MappingNode mapping)
        || mapping.getFlowStyle() != FlowStyle.BLOCK
        || mapping.getValue().isEmpty()) {
      return Optional.empty();
    }
    int column = mapping.getValue().get(0).getKeyNode().getStartMark().getColumn();
    int at = end(mapping);
    return replaced(at, at, "\n" + " ".repeat(column) + path.substring(dot + 1) + ": " + written);
  }

  private @Nullable Node node(String path) {
    Node node = root;
    if (path.isEmpty()) {
      return node;
    }
    for (String step : path.split("\\.", -1)) {
      if (node instanceof MappingNode mapping) {
        NodeTuple tuple = tuple(mapping, step);
        node = tuple == null ? null : tuple.getValueNode();
      } else if (node instanceof SequenceNode sequence
          && step.chars().allMatch(Character::isDigit)
          && step.length() < 6
          && Integer.parseInt(step) < sequence.getValue().size()) {
        node = sequence.getValue().get(Integer.parseInt(step));
      } else {
        return null;
      }
    }
    return node;
  }

  private static @Nullable NodeTuple tuple(MappingNode mapping, String key) {
    for (NodeTuple tuple : mapping.getValue()) {
      if (tuple.getKeyNode() instanceof ScalarNode scalar && scalar.getValue().equals(key)) {
        return tuple;
      }
    }
    return null;
  }

  /** The column of the key that a path ends in. */
  private int indent(String path) {
    NodeTuple tuple = last(path);
    return tuple == null ? 0 : tuple.getKeyNode().getStartMark().getColumn();
  }

  /** Just behind the colon of the key that a path ends in. */
  private int keyEnd(String path) {
    NodeTuple tuple = last(path);
    return tuple == null ? 0 : tuple.getKeyNode().getEndMark().getIndex() + 1;
  }

  private @Nullable NodeTuple last(String path) {
    int dot = path.lastIndexOf('.');
    return node(dot < 0 ? "" : path.substring(0, dot)) instanceof MappingNode mapping
        ? tuple(mapping, path.substring(dot + 1))
        : null;
  }

  private boolean inFlow(String path) {
    for (int dot = path.lastIndexOf('.'); dot >= 0; dot = path.lastIndexOf('.', dot - 1)) {
      Node parent = node(path.substring(0, dot));
      if (parent instanceof MappingNode m && m.getFlowStyle() == FlowStyle.FLOW
          || parent instanceof SequenceNode s && s.getFlowStyle() == FlowStyle.FLOW) {
        return true;
      }
    }
    return false;
  }

  /**
   * Where a node's own text ends. The mark of a block collection stands at whatever comes next,
   * behind comments that belong to that; so the last value inside decides.
   */
  private int end(Node node) {
    if (node instanceof MappingNode mapping
        && mapping.getFlowStyle() == FlowStyle.BLOCK
        && !mapping.getValue().isEmpty()) {
      return end(mapping.getValue().get(mapping.getValue().size() - 1).getValueNode());
    }
    if (node instanceof SequenceNode sequence
        && sequence.getFlowStyle() == FlowStyle.BLOCK
        && !sequence.getValue().isEmpty()) {
      return end(sequence.getValue().get(sequence.getValue().size() - 1));
    }
    int end = node.getEndMark().getIndex();
    int start = node.getStartMark().getIndex();
    while (end > start && Character.isWhitespace(text.codePointAt(offset(end - 1)))) {
      end--;
    }
    return end;
  }

  private static String flow(List<String> values, boolean plain) {
    return values.stream()
        .map(v -> single(v, plain && v.chars().noneMatch(c -> ",[]{}".indexOf(c) >= 0)))
        .collect(java.util.stream.Collectors.joining(", ", "[", "]"));
  }

  private static String block(List<String> values, boolean plain, int indent) {
    StringBuilder lines = new StringBuilder();
    for (String value : values) {
      lines.append('\n').append(" ".repeat(indent)).append("- ").append(single(value, plain));
    }
    return lines.toString();
  }

  private static String folded(String value, int indent) {
    StringBuilder lines = new StringBuilder(">");
    int width = WIDEST;
    for (String word : value.split(" ", -1)) {
      if (width + 1 + word.length() > WIDEST) {
        lines.append('\n').append(" ".repeat(indent)).append(word);
        width = indent + word.length();
      } else {
        lines.append(' ').append(word);
        width += 1 + word.length();
      }
    }
    return lines.toString();
  }

  private static String single(String value, boolean plain) {
    return plain && isPlain(value) ? value : "'" + value.replace("'", "''") + "'";
  }

  /** Texts that mean themselves without quotes wherever they stand. */
  private static boolean isPlain(String value) {
    return !value.isEmpty()
        && Character.isLetter(value.charAt(0))
        && !value.endsWith(" ")
        && !value.endsWith(":")
        && !value.contains(": ")
        && !value.contains(" #")
        && value.chars().allMatch(c -> c >= ' ' && c != 0x7f);
  }
}
