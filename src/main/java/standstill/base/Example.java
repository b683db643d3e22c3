package standstill.base;

import java.util.List;
import standstill.text.Pattern;

/**
 * A pattern with texts that prove it.
 *
 * @param line the pattern
 * @param seen texts that it must match
 */
public record Example(Pattern line, List<String> seen) {
  public Example {
    seen = List.copyOf(seen);
  }
}
