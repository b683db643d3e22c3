package standstill.web;

import java.util.ArrayList;
import java.util.List;
import standstill.guide.Step;
import standstill.guide.Tree;
import standstill.report.Percent;

/**
 * A tree of steps as nested text and as a picture.
 *
 * @param root the tree
 * @param boxes of the picture
 * @param lines between boxes
 * @param width of the picture
 * @param height of the picture
 * @param walk address of the walk
 * @param depths addresses of the same tree, deeper or less deep
 */
public record TreeView(
    NodeView root,
    List<Box> boxes,
    List<Link> lines,
    int width,
    int height,
    int depth,
    String walk,
    List<Depth> depths) {
  private static final int BOX = 212;
  private static final int GAP = 26;
  private static final int LINE = 15;
  private static final int PAD = 7;
  private static final int BETWEEN = 8;
  private static final int LETTERS = 30;
  private static final int MOST_LINES = 4;

  /** Replies less likely than this at their step are not drawn when nothing follows them. */
  private static final double LEAST = 0.003;

  /**
   * A step, and the reply that leads to it.
   *
   * @param reply empty at the root
   * @param kind {@code check}, {@code fix}, {@code log}, {@code written}, {@code over}, {@code
   *     cured} or {@code more}
   */
  public record NodeView(
      String reply, String percent, String kind, String title, List<NodeView> next) {}

  /** A box of the picture. */
  public record Box(int x, int y, int width, int height, String kind, List<Line> text) {}

  /** A line of text in a box. */
  public record Line(int x, int y, String kind, String text) {}

  /** A line from box to box. */
  public record Link(int x1, int y1, int x2, int y2, int mid) {}

  /** A choice of depth. */
  public record Depth(int number, String href) {}

  static TreeView of(Tree.Node tree, int depth, String walk, String self) {
    NodeView root = node("", "", tree);
    List<Box> boxes = new ArrayList<>();
    List<Link> links = new ArrayList<>();
    Layout layout = new Layout(boxes, links);
    layout.place(root, 0);
    List<Depth> depths = new ArrayList<>();
    for (int d = 1; d <= Tree.DEEPEST; d++) {
      depths.add(new Depth(d, self + "&depth=" + d));
    }
    return new TreeView(root, boxes, links, layout.width + 2, layout.bottom, depth, walk, depths);
  }

  private static NodeView node(String reply, String percent, Tree.Node node) {
    List<NodeView> next = new ArrayList<>();
    for (Tree.Branch branch : node.branches()) {
      String chance = Percent.of(branch.chance());
      if (branch.next() != null) {
        next.add(node(branch.reply(), chance, branch.next()));
      } else if (branch.cured()) {
        next.add(new NodeView(branch.reply(), chance, "cured", "repaired", List.of()));
      } else if (branch.chance() >= LEAST) {
        next.add(new NodeView(branch.reply(), chance, "more", "the walk goes on", List.of()));
      }
    }
    Step step = node.step();
    if (step instanceof Step.Ask ask) {
      return new NodeView(reply, percent, "check", ask.check().title(), next);
    }
    if (step instanceof Step.Repair repair) {
      return new NodeView(reply, percent, "fix", repair.fix().title(), next);
    }
    if (step instanceof Step.HandOver) {
      return new NodeView(
          reply, percent, "over", "choose among what is left, or hand over", List.of());
    }
    if (step instanceof Step.Follow follow) {
      return new NodeView(reply, percent, "written", follow.walk().title(), next);
    }
    return new NodeView(reply, percent, "log", "Get the text that the boot prints", next);
  }

  /** Columns by depth; leaves below one another, each step at the height of its replies' middle. */
  private static final class Layout {
    private final List<Box> boxes;
    private final List<Link> links;
    private int bottom = 1;
    private int width;

    Layout(List<Box> boxes, List<Link> links) {
      this.boxes = boxes;
      this.links = links;
    }

    /** Places a step and all that follows; gives the height of its middle. */
    int place(NodeView node, int column) {
      List<String> reply =
          node.reply().isEmpty()
              ? List.of()
              : wrap(node.reply() + " (" + node.percent().replace(' ', '\u00a0') + ")");
      List<String> title = wrap(node.title());
      int height = (reply.size() + title.size()) * LINE + 2 * PAD;
      int x = 1 + column * (BOX + GAP);
      int top = bottom;
      List<Integer> middles = new ArrayList<>();
      for (NodeView next : node.next()) {
        middles.add(place(next, column + 1));
      }
      int middle =
          middles.isEmpty()
              ? top + height / 2
              : Math.max(top + height / 2, (middles.get(0) + middles.get(middles.size() - 1)) / 2);
      int y = middle - height / 2;
      bottom = Math.max(bottom, y + height + BETWEEN);
      width = Math.max(width, x + BOX);
      List<Line> text = new ArrayList<>();
      int at = y + PAD + LINE - 3;
      for (String line : reply) {
        text.add(new Line(x + PAD, at, "reply", line));
        at += LINE;
      }
      for (String line : title) {
        text.add(new Line(x + PAD, at, "title", line));
        at += LINE;
      }
      boxes.add(new Box(x, y, BOX, height, node.kind(), text));
      for (int to : middles) {
        links.add(new Link(x + BOX, middle, x + BOX + GAP, to, x + BOX + GAP / 2));
      }
      return middle;
    }

    private static List<String> wrap(String text) {
      List<String> lines = new ArrayList<>();
      StringBuilder line = new StringBuilder();
      for (String word : text.split(" +")) {
        if (line.length() > 0 && line.length() + 1 + word.length() > LETTERS) {
          lines.add(line.toString());
          line = new StringBuilder();
        }
        line.append(line.length() == 0 ? "" : " ").append(word);
      }
      lines.add(line.toString());
      if (lines.size() > MOST_LINES) {
        List<String> few = new ArrayList<>(lines.subList(0, MOST_LINES));
        few.set(MOST_LINES - 1, few.get(MOST_LINES - 1) + " …");
        return few;
      }
      return lines;
    }
  }
}
