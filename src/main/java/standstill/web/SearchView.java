package standstill.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import standstill.search.Found;
import standstill.search.Kind;
import standstill.search.Results;
import standstill.search.Segment;

/** Search results, ready for their template. */
public record SearchView(
    String query,
    String address,
    String kind,
    boolean asked,
    int total,
    int left,
    boolean nearest,
    List<Results.Reading> read,
    List<KindView> kinds,
    List<FoundView> found) {

  /** A kind to narrow the results to. */
  public record KindView(String href, String title, int count, boolean chosen) {}

  /** A result. */
  public record FoundView(
      String href,
      String kind,
      boolean bySign,
      List<Segment> title,
      String where,
      List<Segment> excerpt) {}

  static SearchView of(Results results, Set<Kind> chosen) {
    String address = "/search?q=" + URLEncoder.encode(results.query(), StandardCharsets.UTF_8);
    String kind = chosen.stream().findFirst().map(Kind::word).orElse("");
    List<KindView> kinds = new ArrayList<>();
    int all = results.counts().values().stream().mapToInt(Integer::intValue).sum();
    kinds.add(new KindView(address, "everything", all, chosen.isEmpty()));
    for (Kind each : Kind.values()) {
      int count = results.counts().getOrDefault(each, 0);
      if (count > 0 || chosen.contains(each)) {
        kinds.add(
            new KindView(
                address + "&kind=" + each.word(),
                each.title() + "s",
                count,
                chosen.contains(each)));
      }
    }
    return new SearchView(
        results.query(),
        kind.isEmpty() ? address : address + "&kind=" + kind,
        kind,
        !results.query().isEmpty(),
        results.total(),
        results.total() - results.found().size(),
        results.nearest(),
        results.read(),
        kinds,
        results.found().stream().map(SearchView::found).toList());
  }

  private static FoundView found(Found found) {
    String href =
        found.kind() == Kind.TRAIL
            ? "/trails#" + found.id()
            : "/" + found.kind().word() + "/" + found.id();
    return new FoundView(
        href, found.kind().title(), found.bySign(), found.title(), found.where(), found.excerpt());
  }
}
