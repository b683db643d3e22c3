package standstill.base.yaml;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.Parser;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.ReaderException;
import org.yaml.snakeyaml.reader.StreamReader;
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

  /** Most levels of lists and maps, one in the other. */
  static final int DEEPEST = 12;

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
    // One above what Guarded lets through, which says where.
    options.setNestingDepthLimit(DEEPEST + 1);
    options.setMaxAliasesForCollections(0);
    options.setAllowRecursiveKeys(false);
    Node root;
    try {
      Parser parser = new Guarded(new ParserImpl(new StreamReader(text), options));
      root = new Composer(parser, new Resolver(), options).getSingleNode();
    } catch (Guarded.Refused e) {
      sink.error(e.mark(), e.what(), e.advice());
      return Optional.empty();
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
