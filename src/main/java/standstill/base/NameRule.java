package standstill.base;

import java.util.List;
import standstill.text.Pattern;

/**
 * Two names of one thing: how the longer one becomes the usual one.
 *
 * @param line the name, from its beginning
 * @param as template of the usual name
 * @param seen names that it must match
 */
public record NameRule(Pattern line, String as, List<String> seen) {
  public NameRule {
    seen = List.copyOf(seen);
  }
}
