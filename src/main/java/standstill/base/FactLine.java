package standstill.base;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.text.Pattern;

/**
 * A line that says something of the machine: of a thing, or of a wish.
 *
 * <p>Texts with {@code {group}} places are filled with what the pattern's groups caught.
 *
 * @param id unique in its family
 * @param line matched anywhere in a message, as often as it stands there
 * @param beside must be in the same message as well
 * @param unless must not be in the same message
 * @param thing sort of the thing; empty when the line speaks of a wish
 * @param wish kind of the wish; empty when the line speaks of a thing
 * @param state what it says
 * @param name template of the name
 * @param on template of the name of what it hangs on, or of who wishes
 * @param with further values by name, as templates; the pattern's groups are values anyway
 * @param each group whose text names several, which {@code {each}} then stands for; empty for one
 * @param seen texts that it must match
 */
public record FactLine(
    String id,
    Pattern line,
    Optional<Pattern> beside,
    Optional<Pattern> unless,
    Optional<ThingSort> thing,
    Optional<WishKind> wish,
    ThingState state,
    String name,
    String on,
    Map<String, String> with,
    String each,
    List<String> seen) {
  public FactLine {
    with = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(with));
    seen = List.copyOf(seen);
  }

  /** Whether the message has what must stand beside, and nothing that must not. */
  public boolean fits(String message) {
    return beside.map(p -> p.foundIn(message)).orElse(true)
        && !unless.map(p -> p.foundIn(message)).orElse(false);
  }
}
