package standstill.base.yaml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.DeviceClass;
import standstill.base.FactLine;
import standstill.base.Facts;
import standstill.base.NameRule;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.text.Pattern;

/** Reads what a family's lines say of the machine. */
final class FactsReader {
  private FactsReader() {}

  static Facts read(Fields family) {
    List<FactLine> lines = new ArrayList<>();
    for (Fields each : family.maps("facts")) {
      line(each).ifPresent(lines::add);
    }
    distinct(family, lines);
    return new Facts(lines, classes(family), names(family));
  }

  private static void distinct(Fields family, List<FactLine> lines) {
    Set<String> seen = new HashSet<>();
    for (FactLine line : lines) {
      if (!seen.add(line.id())) {
        family.error("facts", "second fact line with the id '" + line.id() + "'", "");
      }
    }
  }

  private static Optional<FactLine> line(Fields each) {
    Optional<ThingSort> thing = ThingSort.of(each.text("thing"));
    Optional<WishKind> wish = WishKind.of(each.text("wish"));
    if (each.has("thing") == each.has("wish")) {
      each.error(
          each.has("thing") ? "wish" : "id",
          "fact line speaks of " + (each.has("thing") ? "a thing and a wish" : "nothing"),
          "give it exactly one of: thing, wish");
    }
    Optional<Pattern> line = each.pattern("line");
    Optional<ThingState> state = ThingState.of(each.text("state"));
    if (line.isEmpty() || state.isEmpty()) {
      return Optional.empty();
    }
    List<String> groups = new ArrayList<>(line.get().groups());
    String several = each.text("each");
    if (!several.isEmpty()) {
      inPattern(each, "each", several, groups);
      groups.add("each");
    }
    String usual = groups.contains("name") ? "{name}" : "";
    String name = each.has("name") ? each.text("name") : usual;
    template(each, "name", name, groups);
    if (name.isEmpty() && thing.isPresent()) {
      each.error(
          "id",
          "fact line names no thing",
          "give the pattern a group 'name', or the line a key 'name'");
    }
    template(each, "on", each.text("on"), groups);
    Map<String, String> with = new LinkedHashMap<>();
    Fields map = each.map("with");
    for (String key : map.keys()) {
      template(map, key, map.text(key), groups);
      with.put(key, map.text(key));
    }
    return Optional.of(
        new FactLine(
            each.text("id"),
            line.get(),
            each.pattern("beside"),
            each.pattern("unless"),
            thing,
            wish,
            state.get(),
            name,
            each.text("on"),
            with,
            several,
            each.texts("seen")));
  }

  private static List<DeviceClass> classes(Fields family) {
    List<DeviceClass> classes = new ArrayList<>();
    for (Fields each : family.maps("device-classes")) {
      String code = each.text("code");
      if (!code.matches("[0-9a-f]{2,6}")) {
        each.error(
            "code", "'" + code + "' is no class number", "write two to six hexadecimal digits");
      }
      ThingSort.of(each.text("thing"))
          .ifPresent(
              sort ->
                  classes.add(
                      new DeviceClass(
                          code,
                          sort,
                          each.text("title"),
                          each.has("disks"),
                          each.texts("drivers"))));
    }
    return classes;
  }

  private static List<NameRule> names(Fields family) {
    List<NameRule> names = new ArrayList<>();
    for (Fields each : family.maps("names")) {
      each.pattern("line")
          .ifPresent(
              line -> {
                template(each, "as", each.text("as"), line.groups());
                names.add(new NameRule(line, each.text("as"), each.texts("seen")));
              });
    }
    return names;
  }

  private static void template(Fields at, String key, String text, List<String> groups) {
    int open = text.indexOf('{');
    while (open >= 0) {
      int close = text.indexOf('}', open);
      inPattern(
          at, key, close < 0 ? text.substring(open + 1) : text.substring(open + 1, close), groups);
      open = close < 0 ? -1 : text.indexOf('{', close);
    }
  }

  private static void inPattern(Fields at, String key, String group, List<String> groups) {
    if (!groups.contains(group)) {
      at.error(
          key, "'" + group + "' is no group of the line's pattern", Words.advice(group, groups));
    }
  }
}
