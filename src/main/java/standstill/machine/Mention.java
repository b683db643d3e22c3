package standstill.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import standstill.base.ThingState;

/**
 * A line that spoke of a thing or a wish.
 *
 * @param index place of the line in the boot, from 0
 * @param line its number in the input, from 1
 * @param text the line as a person would have read it
 * @param fact id of the fact line that read it
 * @param state what it said
 * @param values what its groups caught
 */
public record Mention(
    int index, int line, String text, String fact, ThingState state, Map<String, String> values) {
  public Mention {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
  }
}
