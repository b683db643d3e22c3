package standstill.base.yaml;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.reader.ReaderException;
import org.yaml.snakeyaml.representer.Representer;
import org.yaml.snakeyaml.resolver.Resolver;

/**
 * Composes one YAML text into nodes, refusing what a hostile or careless file may hold.
 *
 * <p>Nodes instead of objects, because they keep their places. Aliases are refused outright: they
 * are how a small file expands into a huge one.
 */
final class Nodes {
  /** Longest accepted file, in characters. */
  static final int LONGEST_FILE = 256 * 1024;

  private static final int DEEPEST = 12;
  private static final int LONGEST_SCALAR = 8_000;
  private static final Set<Tag> KNOWN_TAGS =
      Set.of(Tag.STR, Tag.INT, Tag.FLOAT, Tag.BOOL, Tag.NULL, Tag.MAP, Tag.SEQ, Tag.TIMESTAMP);

  private final Sink sink;

  Nodes(Sink sink) {
    this.sink = sink;
  }

  /** The document's root, or empty when it can't be used; the sink then knows why. */
  Optional<Node> compose() {
    String text = sink.text();
    if (text.length() > LONGEST_FILE) {
      sink.errorAtFile(
          "file of " + text.length() + " characters",
          "allowed: at most " + LONGEST_FILE + "; split it");
      return Optional.empty();
    }
    for (int i = 0; i < text.length(); i++) {
      if (BaseText.isStray(text, i)) {
        sink.errorAtOffset(
            i,
            String.format("byte 0x%02X is not UTF-8", BaseText.byteOf(text.charAt(i))),
            "save the file as UTF-8");
        return Optional.empty();
      }
    }
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(LONGEST_FILE + 1);
    options.setNestingDepthLimit(DEEPEST);
    options.setMaxAliasesForCollections(0);
    options.setAllowRecursiveKeys(false);
    DumperOptions dumper = new DumperOptions();
    Yaml yaml =
        new Yaml(
            new SafeConstructor(options), new Representer(dumper), dumper, options, new Resolver());
    Node root;
    try {
      root = yaml.compose(new java.io.StringReader(text));
    } catch (MarkedYAMLException e) {
      report(e);
      return Optional.empty();
    } catch (ReaderException e) {
      sink.errorAtOffset(
          e.getPosition(),
          "character that YAML does not allow",
          "write it as an escape in double quotes");
      return Optional.empty();
    } catch (YAMLException e) {
      sink.errorAtFile("not readable as YAML: " + firstLine(e), "");
      return Optional.empty();
    } catch (StackOverflowError e) {
      sink.errorAtFile("nested too deeply", "allowed: at most " + DEEPEST + " levels");
      return Optional.empty();
    }
    if (root == null) {
      sink.errorAtFile("file is empty", "");
      return Optional.empty();
    }
    return inspect(root, 1) ? Optional.of(root) : Optional.empty();
  }

  private void report(MarkedYAMLException e) {
    Mark mark = e.getProblemMark();
    String what = e.getProblem() == null ? firstLine(e) : e.getProblem().strip();
    if (what.contains("Nesting Depth")) {
      what = "nested too deeply";
    }
    if (mark == null) {
      sink.errorAtFile(what, "");
    } else {
      sink.error(mark, what, "the text is not well-formed YAML at this place");
    }
  }

  private static String firstLine(Exception e) {
    String message = e.getMessage() == null ? "unknown reason" : e.getMessage();
    return message.lines().findFirst().orElse("unknown reason");
  }

  private boolean inspect(Node node, int depth) {
    if (node.getAnchor() != null) {
      sink.error(
          node.getStartMark(),
          "anchor '" + node.getAnchor() + "'",
          "write the value out; aliases are not allowed");
      return false;
    }
    if (!KNOWN_TAGS.contains(node.getTag())) {
      sink.error(
          node.getStartMark(),
          "tag " + node.getTag().getValue(),
          "allowed: plain text, numbers, lists and maps");
      return false;
    }
    if (depth > DEEPEST) {
      sink.error(
          node.getStartMark(), "nested too deeply", "allowed: at most " + DEEPEST + " levels");
      return false;
    }
    boolean sound = true;
    if (node instanceof ScalarNode scalar && scalar.getValue().length() > LONGEST_SCALAR) {
      sink.error(
          node.getStartMark(),
          "text of " + scalar.getValue().length() + " characters",
          "allowed: at most " + LONGEST_SCALAR);
      sound = false;
    } else if (node instanceof SequenceNode sequence) {
      for (Node item : sequence.getValue()) {
        sound &= inspect(item, depth + 1);
      }
    } else if (node instanceof MappingNode mapping) {
      sound = inspectMapping(mapping.getValue(), depth);
    }
    return sound;
  }

  private boolean inspectMapping(List<NodeTuple> tuples, int depth) {
    boolean sound = true;
    Set<String> keys = new java.util.HashSet<>();
    for (NodeTuple tuple : tuples) {
      if (tuple.getKeyNode() instanceof ScalarNode key) {
        if (!keys.add(key.getValue())) {
          sink.error(
              key.getStartMark(),
              "key '" + key.getValue() + "' stands here a second time",
              "keep one of them");
          sound = false;
        }
      } else {
        sink.error(tuple.getKeyNode().getStartMark(), "key that is not plain text", "");
        sound = false;
      }
      sound &= inspect(tuple.getKeyNode(), depth + 1) & inspect(tuple.getValueNode(), depth + 1);
    }
    return sound;
  }
}
