package standstill.web;

import io.javalin.http.Context;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import standstill.search.Kind;
import standstill.search.Search;

/** The search page, and the suggestions while typing. */
final class SearchPage {
  private static final int LONGEST_QUERY = 2_000;
  private static final int MOST = 20;
  private static final int MOST_SUGGESTIONS = 8;

  private final Pages pages;

  SearchPage(Pages pages) {
    this.pages = pages;
  }

  void show(Context ctx) {
    String query = query(ctx);
    Set<Kind> kinds = EnumSet.noneOf(Kind.class);
    String kind = ctx.queryParam("kind");
    if (kind != null && !kind.isEmpty()) {
      kinds.add(Kind.of(kind).orElseThrow(() -> new NotUnderstood("There is no such kind.")));
    }
    int most = ctx.queryParam("all") == null ? MOST : Integer.MAX_VALUE;
    Search search = InUse.edition(ctx).search();
    pages.show(ctx, "search", Map.of("s", SearchView.of(search.find(query, kinds, most), kinds)));
  }

  void suggest(Context ctx) {
    Search search = InUse.edition(ctx).search();
    ctx.json(Map.of("suggestions", search.suggest(query(ctx), MOST_SUGGESTIONS)));
  }

  private static String query(Context ctx) {
    String query = ctx.queryParam("q");
    if (query == null) {
      return "";
    }
    if (query.length() > LONGEST_QUERY) {
      throw new NotUnderstood(
          "A search takes one line of at most "
              + LONGEST_QUERY
              + " characters. Paste a whole log into the paste box.");
    }
    return query.strip();
  }
}
