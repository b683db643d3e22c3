package standstill.match;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A line on which a sign stands.
 *
 * @param index place of the line in the boot, from 0
 * @param line number of the line in the input, from 1
 * @param text the line as a person would have read it
 * @param values captured values by group name
 */
public record Hit(int index, int line, String text, Map<String, String> values) {
  public Hit {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
  }
}
