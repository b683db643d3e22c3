package standstill.web;

import io.javalin.http.Context;
import java.util.Map;
import standstill.guide.Course;
import standstill.guide.Tree;
import standstill.store.Edition;
import standstill.store.Pastes;

/** The walk from a place on as a whole tree, to print. */
final class TreePage {
  private static final int USUAL_DEPTH = 3;

  private final Pages pages;
  private final Pastes pastes;

  TreePage(Pages pages, Pastes pastes) {
    this.pages = pages;
    this.pastes = pastes;
  }

  void show(Context ctx) {
    Edition edition = InUse.edition(ctx);
    WalkPlace place = WalkPlace.of(ctx, edition, pastes);
    Course course = WalkAddress.read(ctx, edition.base());
    int depth = DiagnoseApi.number(ctx, "depth", USUAL_DEPTH);
    if (depth < 1 || depth > Tree.DEEPEST) {
      throw new NotUnderstood("'depth' lies between 1 and " + Tree.DEEPEST + ".");
    }
    Tree.Node tree = Tree.grow(edition.guide(), place.start(), course, place.log(), depth);
    pages.show(
        ctx,
        "tree",
        Map.of("v", TreeView.of(tree, depth, place.to(course), place.to("tree", course))));
  }
}
