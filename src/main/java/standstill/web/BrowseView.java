package standstill.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.search.Browse;

/** Faults by facets, ready for their template. */
public record BrowseView(
    int shown, int total, List<FacetView> facets, List<ValueView> chosen, List<GroupView> groups) {

  /** A facet; open when something of it is chosen. */
  public record FacetView(String title, boolean open, List<ValueView> values) {}

  /** A value; the address adds it to the choice, or takes it out. */
  public record ValueView(String href, String title, int count, boolean chosen) {}

  /** The faults of a stage. */
  public record GroupView(String stage, List<LinkView> faults) {}

  static BrowseView of(Base base, Browse.Shown shown, Map<Browse.Facet, Set<String>> choice) {
    List<FacetView> facets = new ArrayList<>();
    List<ValueView> chosen = new ArrayList<>();
    shown
        .facets()
        .forEach(
            (facet, values) -> {
              List<ValueView> views = new ArrayList<>();
              for (Browse.Value value : values) {
                ValueView view =
                    new ValueView(
                        address(choice, facet, value.id()),
                        value.title(),
                        value.count(),
                        value.chosen());
                views.add(view);
                if (value.chosen()) {
                  chosen.add(view);
                }
              }
              boolean open = choice.containsKey(facet) || facet == Browse.Facet.STAGE;
              facets.add(new FacetView(facet.title(), open, views));
            });
    Map<String, List<LinkView>> groups = new LinkedHashMap<>();
    for (Fault fault : shown.faults()) {
      String part = base.scale().parts().getOrDefault(fault.part(), fault.part());
      groups
          .computeIfAbsent(fault.stage().word(), k -> new ArrayList<>())
          .add(
              FaultView.link(
                  fault,
                  part
                      + (fault.general() ? ", general" : "")
                      + ", "
                      + fault.howCommon().word().replace('-', ' ')));
    }
    return new BrowseView(
        shown.faults().size(),
        base.faults().size(),
        facets,
        chosen,
        groups.entrySet().stream().map(e -> new GroupView(e.getKey(), e.getValue())).toList());
  }

  /** The address of the choice with one value added, or taken out when it was in. */
  private static String address(
      Map<Browse.Facet, Set<String>> choice, Browse.Facet facet, String value) {
    Map<Browse.Facet, Set<String>> other = new EnumMap<>(Browse.Facet.class);
    choice.forEach((key, values) -> other.put(key, new LinkedHashSet<>(values)));
    Set<String> values = other.computeIfAbsent(facet, k -> new LinkedHashSet<>());
    if (!values.remove(value)) {
      values.add(value);
    }
    List<String> parts = new ArrayList<>();
    other.forEach(
        (key, all) ->
            all.forEach(
                v -> parts.add(key.word() + "=" + URLEncoder.encode(v, StandardCharsets.UTF_8))));
    return parts.isEmpty() ? "/faults" : "/faults?" + String.join("&", parts);
  }
}
