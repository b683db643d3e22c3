package standstill.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One thing of which a statement holds.
 *
 * @param values what sentences can use
 * @param lines the lines that show it; where it is an absence, those of what was looked for
 */
public record Found(Map<String, String> values, List<Mention> lines) {
  public Found {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    lines = distinct(lines);
  }

  /** Several fact lines may have read one line. */
  private static List<Mention> distinct(List<Mention> lines) {
    Map<Integer, Mention> byIndex = new LinkedHashMap<>();
    lines.forEach(line -> byIndex.putIfAbsent(line.index(), line));
    return List.copyOf(byIndex.values());
  }
}
