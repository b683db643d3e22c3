package standstill.web;

import io.javalin.http.Context;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.search.Browse;

/** Browsing the faults by facets. */
final class BrowsePage {
  private static final int MOST_VALUES = 100;

  private final Pages pages;
  private final Base base;
  private final Browse browse;

  BrowsePage(Pages pages, Base base) {
    this.pages = pages;
    this.base = base;
    this.browse = new Browse(base);
  }

  void show(Context ctx) {
    Map<Browse.Facet, Set<String>> choice = new EnumMap<>(Browse.Facet.class);
    for (Browse.Facet facet : Browse.Facet.values()) {
      Set<String> values = new LinkedHashSet<>(ctx.queryParams(facet.word()));
      if (values.size() > MOST_VALUES) {
        throw new NotUnderstood("At most " + MOST_VALUES + " values of a facet can be chosen.");
      }
      if (!values.isEmpty()) {
        choice.put(facet, values);
      }
    }
    pages.show(ctx, "faults", Map.of("b", BrowseView.of(base, browse.show(choice), choice)));
  }
}
