package standstill.guide;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import standstill.base.Check;
import standstill.rank.Ranking;

/**
 * The walk from here on as a tree: each step, and what follows from each reply.
 *
 * <p>Grown in breadth, so that when the bound on nodes is met every branch has come about as deep
 * as the others. Replies less likely than {@link #LEAST} are not followed. "I don't know" and
 * "skip" are left out: they lead to the next best step, and would treble the paper.
 */
public final class Tree {
  /** Deepest tree that is grown. */
  public static final int DEEPEST = 5;

  /** Most steps in a tree; a page of print, and well within a second. */
  public static final int MOST = 150;

  /** Chance, from the root on, below which a branch is not followed. */
  static final double LEAST = 0.003;

  private Tree() {}

  /**
   * A step in the tree.
   *
   * @param step what to do
   * @param chance that the walk comes here
   * @param branches by reply, in order; empty at the end or at the chosen depth
   */
  public record Node(Step step, double chance, List<Branch> branches) {
    public Node {
      branches = List.copyOf(branches);
    }
  }

  /**
   * A reply and what follows from it.
   *
   * @param reply in words
   * @param chance of the reply at its step
   * @param next what follows; null when the walk ends well here, or was not followed further
   * @param cured whether it ends well
   */
  public record Branch(
      String reply, double chance, @org.jspecify.annotations.Nullable Node next, boolean cured) {}

  private static final class Growing {
    final Course course;
    final Guidance guidance;
    final double chance;
    final int depth;
    final List<Reply> replies = new ArrayList<>();

    Growing(Course course, Guidance guidance, double chance, int depth) {
      this.course = course;
      this.guidance = guidance;
      this.chance = chance;
      this.depth = depth;
    }

    Node node() {
      return new Node(
          guidance.step(),
          chance,
          replies.stream()
              .map(
                  r ->
                      new Branch(r.words, r.chance, r.next == null ? null : r.next.node(), r.cured))
              .toList());
    }
  }

  private static final class Reply {
    final String words;
    final double chance;
    final Course.@org.jspecify.annotations.Nullable Turn turn;
    final boolean cured;
    @org.jspecify.annotations.Nullable Growing next;

    Reply(
        String words,
        double chance,
        Course.@org.jspecify.annotations.Nullable Turn turn,
        boolean cured) {
      this.words = words;
      this.chance = chance;
      this.turn = turn;
      this.cured = cured;
    }
  }

  /**
   * Grows a tree.
   *
   * @param start the ranking before anything was said
   * @param course what was said so far
   * @param log whether a log was read
   * @param depth steps below one another, from 1 to {@link #DEEPEST}
   */
  public static Node grow(Guide guide, Ranking start, Course course, boolean log, int depth) {
    Growing root = at(guide, start, course, log, 1, 1);
    Deque<Growing> open = new ArrayDeque<>(List.of(root));
    int count = 1;
    while (!open.isEmpty()) {
      Growing here = open.removeFirst();
      replies(guide, here);
      for (Reply reply : here.replies) {
        double chance = here.chance * reply.chance;
        if (reply.turn != null
            && here.depth < Math.min(depth, DEEPEST)
            && chance >= LEAST
            && count < MOST) {
          Growing next =
              at(guide, start, here.course.reply(reply.turn), log, chance, here.depth + 1);
          reply.next = next;
          open.addLast(next);
          count++;
        }
      }
    }
    return root.node();
  }

  private static Growing at(
      Guide guide, Ranking start, Course course, boolean log, double chance, int depth) {
    return new Growing(
        course, guide.guide(start, course.observations(), course.limits(log)), chance, depth);
  }

  private static void replies(Guide guide, Growing here) {
    if (here.guidance.step() instanceof Step.Ask ask) {
      for (Check.Answer answer : ask.check().answers()) {
        here.replies.add(
            new Reply(
                answer.text(),
                guide.chance(here.guidance.ranking(), ask.check().id(), answer.id()),
                new Course.Turn(Course.Kind.CHECK, ask.check().id(), answer.id()),
                false));
      }
    } else if (here.guidance.step() instanceof Step.Repair repair) {
      boolean lasting = repair.fix().scope().lasting();
      here.replies.add(
          new Reply(
              "It helped",
              repair.chance(),
              lasting ? null : new Course.Turn(Course.Kind.FIX, repair.fix().id(), Course.HELPED),
              lasting));
      here.replies.add(
          new Reply(
              "It did not help",
              1 - repair.chance(),
              new Course.Turn(Course.Kind.FIX, repair.fix().id(), Course.NO_HELP),
              false));
    } else if (here.guidance.step() instanceof Step.Follow follow) {
      here.replies.add(
          new Reply(
              "It came to no cause",
              1,
              new Course.Turn(Course.Kind.WALK, follow.walk().id(), Course.NO_CAUSE),
              false));
    } else if (here.guidance.step() instanceof Step.GetLog) {
      here.replies.add(
          new Reply(
              "No text can be had",
              1,
              new Course.Turn(Course.Kind.LOG, "log", Course.SKIP),
              false));
    }
  }
}
