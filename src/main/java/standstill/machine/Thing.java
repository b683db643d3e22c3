package standstill.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/**
 * Something that the machine has, or that its programs start.
 *
 * @param sort which sort of thing
 * @param name as the log names it, in its usual form
 * @param title in words for people; empty when there are none beyond the name
 * @param on name of what it hangs on, or empty
 * @param state what is known of it at the end
 * @param values last values by name
 * @param mentions lines that spoke of it, the first {@link #MOST_MENTIONS} and the last
 */
public record Thing(
    ThingSort sort,
    String name,
    String title,
    String on,
    ThingState state,
    Map<String, String> values,
    List<Mention> mentions) {
  /** Lines that are kept of each thing. */
  public static final int MOST_MENTIONS = 40;

  public Thing {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    mentions = List.copyOf(mentions);
  }

  /** A value, or the empty text. */
  public String value(String key) {
    return Optional.ofNullable(values.get(key)).orElse("");
  }

  /** Whether a line ever said this of it. */
  public boolean ever(ThingState asked) {
    return mentions.stream().anyMatch(m -> m.state() == asked);
  }

  /** The first line that said this of it. */
  public Optional<Mention> first(ThingState asked) {
    return mentions.stream().filter(m -> m.state() == asked).findFirst();
  }

  /** The first line that spoke of it. */
  public Mention first() {
    return mentions.get(0);
  }

  /** The last line that spoke of it. */
  public Mention last() {
    return mentions.get(mentions.size() - 1);
  }

  /** Whether it was listed on a bus, and no line shows that a driver has taken it. */
  public boolean isWithoutDriver() {
    return sort.isOnBus()
        && ever(ThingState.SEEN)
        && !ever(ThingState.DRIVEN)
        && !ever(ThingState.READY)
        && !ever(ThingState.FAILED);
  }

  /** Its name with its title, where both say something. */
  public String label() {
    return title.isEmpty() || title.equals(name) ? name : name + " (" + title + ")";
  }

  /** What it is, for people: its title or else its sort. */
  public String what() {
    return title.isEmpty() ? sort.title() : title;
  }
}
