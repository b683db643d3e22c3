package standstill.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import standstill.text.Pattern;

/**
 * Collects meanings. In a line every character has one meaning at the most, and who speaks first
 * keeps it; a code alone keeps all readings.
 */
final class Findings {
  private final String text;
  private final boolean alone;
  private final List<Meaning> found = new ArrayList<>();

  Findings(String text, boolean alone) {
    this.text = text;
    this.alone = alone;
  }

  /** A place in the line with the values that a pattern caught. */
  record Place(int start, int end, Map<String, String> values) {
    String get(String group) {
      return values.getOrDefault(group, "");
    }

    boolean has(String group) {
      return values.containsKey(group);
    }
  }

  String text() {
    return text;
  }

  /**
   * Every match of a pattern. The place is that of the last text in it that equals group {@code
   * code}, so what a pattern asks for behind that group must not be able to repeat it.
   */
  void each(Pattern pattern, Consumer<Place> use) {
    if (!pattern.literals().isEmpty() && pattern.literals().stream().noneMatch(text::contains)) {
      return;
    }
    int from = 0;
    while (from <= text.length()) {
      Optional<Pattern.Match> match = pattern.find(text, from);
      if (match.isEmpty()) {
        return;
      }
      Pattern.Match m = match.get();
      String code = m.values().getOrDefault("code", text.substring(m.start(), m.end()));
      int start = Math.max(m.start(), text.lastIndexOf(code, m.end() - code.length()));
      use.accept(new Place(start, start + code.length(), m.values()));
      from = Math.max(m.end(), m.start() + 1);
    }
  }

  void add(Place place, Kind kind, String meaning, String source) {
    add(place.start(), place.end(), kind, meaning, source);
  }

  void add(int start, int end, Kind kind, String meaning, String source) {
    if (alone || found.stream().noneMatch(m -> m.start() < end && start < m.end())) {
      found.add(new Meaning(start, end, text.substring(start, end), kind, meaning, source));
    }
  }

  /** A reading of the whole text, when that is one code. */
  void whole(Kind kind, String meaning, String source) {
    add(0, text.length(), kind, meaning, source);
  }

  List<Meaning> all() {
    return alone
        ? found.stream().distinct().toList()
        : found.stream().sorted(Comparator.comparingInt(Meaning::start)).toList();
  }
}
