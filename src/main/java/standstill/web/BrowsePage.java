package standstill.web;

import io.javalin.http.Context;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import standstill.search.Browse;
import standstill.store.Edition;

/** Browsing the faults by facets. */
final class BrowsePage {
  private static final int MOST_VALUES = 100;

  private final Pages pages;

  BrowsePage(Pages pages) {
    this.pages = pages;
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
    Edition edition = InUse.edition(ctx);
    Browse.Shown shown = edition.browse().show(choice);
    pages.show(ctx, "faults", Map.of("b", BrowseView.of(edition.base(), shown, choice)));
  }
}
