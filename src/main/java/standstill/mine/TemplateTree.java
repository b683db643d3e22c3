package standstill.mine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Groups messages into templates while they come in, by a parse tree of fixed depth.
 *
 * <p>The published method: P. He, J. Zhu, Z. Zheng, M. R. Lyu, "Drain: An Online Log Parsing
 * Approach with Fixed Depth Tree", ICWS 2017. A message goes down by its number of tokens, then by
 * its first tokens; a token with a digit, and one for which a node has no room, goes to the
 * wildcard's branch. In the leaf it joins the group that it is most like, if enough tokens are the
 * same, and what differs becomes a wildcard in the group's template. The cost of a message is bound
 * by the depth and the groups of one leaf.
 *
 * <p>Two limits are the method's own: messages of different length never share a group, and a
 * message that begins with what varies may open a group of its own.
 */
final class TemplateTree {
  /** Stands for whatever varies. */
  static final String WILDCARD = "<*>";

  /** Most groups; hostile text must not fill the memory. */
  private static final int MOST_GROUPS = 20_000;

  /** Most groups of one leaf, each of which a message is compared with. */
  private static final int MOST_IN_LEAF = 500;

  private final int steps;
  private final double similarity;
  private final int mostChildren;
  private final boolean valuesCount;
  private final Map<String, Node> roots = new HashMap<>();
  private int size;

  /**
   * An empty tree.
   *
   * @param depth levels of the tree as the paper counts them, root and leaf included; 3 or more
   * @param similarity share of equal tokens from which a message belongs to a group, 0 to 1
   * @param mostChildren branches of one node, the wildcard's included
   * @param valuesCount whether two wildcards are equal tokens. The paper says no; where most of
   *     what varies is masked beforehand, no would part messages because they hold many values
   */
  TemplateTree(int depth, double similarity, int mostChildren, boolean valuesCount) {
    this.steps = depth - 3;
    this.similarity = similarity;
    this.mostChildren = mostChildren;
    this.valuesCount = valuesCount;
  }

  private static final class Node {
    final Map<String, Node> children = new HashMap<>();
    final List<Group> groups = new ArrayList<>();
  }

  /** Messages of one template. */
  static final class Group {
    private final String[] tokens;

    private Group(List<String> tokens) {
      this.tokens = tokens.toArray(new String[0]);
    }

    /** The tokens, with the wildcard where they differ. */
    List<String> template() {
      return List.of(tokens);
    }

    private void widen(List<String> message) {
      for (int i = 0; i < tokens.length; i++) {
        if (!tokens[i].equals(message.get(i))) {
          tokens[i] = WILDCARD;
        }
      }
    }

    private int wildcards() {
      return (int) Arrays.stream(tokens).filter(WILDCARD::equals).count();
    }

    private double likeness(List<String> message, boolean valuesCount) {
      int same = 0;
      for (int i = 0; i < tokens.length; i++) {
        boolean counts = valuesCount || !tokens[i].equals(WILDCARD);
        if (counts && tokens[i].equals(message.get(i))) {
          same++;
        }
      }
      return tokens.length == 0 ? 1 : (double) same / tokens.length;
    }
  }

  /** How many groups there are. */
  int size() {
    return size;
  }

  /**
   * Puts a message where it belongs.
   *
   * @param tokens of the message, with the wildcard for what was masked
   * @param apart messages in which this differs never share a group
   * @return its group, a new one when it is like none; empty when there is no room for a new one
   */
  Optional<Group> add(List<String> tokens, String apart) {
    Node leaf = leaf(tokens, apart);
    Optional<Group> nearest = nearest(leaf.groups, tokens);
    if (nearest.isPresent()) {
      nearest.get().widen(tokens);
      return nearest;
    }
    if (size == MOST_GROUPS || leaf.groups.size() == MOST_IN_LEAF) {
      return Optional.empty();
    }
    Group group = new Group(tokens);
    leaf.groups.add(group);
    size++;
    return Optional.of(group);
  }

  private Node leaf(List<String> tokens, String apart) {
    Node node = roots.computeIfAbsent(tokens.size() + " " + apart, key -> new Node());
    for (String token : tokens.subList(0, Math.min(steps, tokens.size()))) {
      node = child(node, token);
    }
    return node;
  }

  private Node child(Node node, String token) {
    Node child = node.children.get(token);
    if (child != null) {
      return child;
    }
    boolean varies = token.chars().anyMatch(c -> c >= '0' && c <= '9');
    boolean wildcardThere = node.children.containsKey(WILDCARD);
    boolean room = node.children.size() + (wildcardThere ? 0 : 1) < mostChildren;
    String branch = varies || !room ? WILDCARD : token;
    return node.children.computeIfAbsent(branch, key -> new Node());
  }

  private Optional<Group> nearest(List<Group> groups, List<String> tokens) {
    Group best = null;
    double most = -1;
    for (Group group : groups) {
      double likeness = group.likeness(tokens, valuesCount);
      if (likeness > most
          || (likeness == most && best != null && group.wildcards() > best.wildcards())) {
        most = likeness;
        best = group;
      }
    }
    return most >= similarity ? Optional.ofNullable(best) : Optional.empty();
  }
}
