package standstill.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.ThingState;
import standstill.base.WishKind;

/**
 * Something that the boot asks for.
 *
 * @param kind what for
 * @param name what is asked for, in its usual form; empty when no line names it
 * @param by who asks, or empty
 * @param state what became of it
 * @param values last values by name
 * @param mentions lines that spoke of it
 */
public record Wish(
    WishKind kind,
    String name,
    String by,
    ThingState state,
    Map<String, String> values,
    List<Mention> mentions) {
  public Wish {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    mentions = List.copyOf(mentions);
  }

  /** Whether it asks by an identifier or label, and not by a device's name. */
  public boolean isById() {
    return name.indexOf('=') > 0;
  }

  /** Whether it was given up. */
  public boolean isUnmet() {
    return state == ThingState.FAILED;
  }

  /** The line at which it was given up. */
  public Optional<Mention> givenUp() {
    return mentions.stream().filter(m -> m.state() == ThingState.FAILED).findFirst();
  }

  /** A value, or the empty text. */
  public String value(String key) {
    return Optional.ofNullable(values.get(key)).orElse("");
  }

  /** The name, or words where no line says it. */
  public String shown() {
    return name.isEmpty() ? "(not named)" : name;
  }
}
