package standstill.web;

import io.javalin.http.Context;
import java.util.Map;
import standstill.guide.Course;
import standstill.guide.Guide;
import standstill.guide.Tree;
import standstill.report.Diagnoser;
import standstill.store.Pastes;

/** The walk from a place on as a whole tree, to print. */
final class TreePage {
  private static final int USUAL_DEPTH = 3;

  private final Pages pages;
  private final Diagnoser diagnoser;
  private final Guide guide;
  private final Pastes pastes;

  TreePage(Pages pages, Diagnoser diagnoser, Guide guide, Pastes pastes) {
    this.pages = pages;
    this.diagnoser = diagnoser;
    this.guide = guide;
    this.pastes = pastes;
  }

  void show(Context ctx) {
    WalkPlace place = WalkPlace.of(ctx, diagnoser, guide, pastes);
    Course course = WalkAddress.read(ctx, diagnoser.base());
    int depth = DiagnoseApi.number(ctx, "depth", USUAL_DEPTH);
    if (depth < 1 || depth > Tree.DEEPEST) {
      throw new NotUnderstood("'depth' lies between 1 and " + Tree.DEEPEST + ".");
    }
    Tree.Node tree = Tree.grow(guide, place.start(), course, place.log(), depth);
    pages.show(
        ctx,
        "tree",
        Map.of("v", TreeView.of(tree, depth, place.to(course), place.to("tree", course))));
  }
}
