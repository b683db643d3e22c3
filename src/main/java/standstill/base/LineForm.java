package standstill.base;

import java.util.List;
import standstill.text.Pattern;

/**
 * How a program writes the beginning of a line, before the message itself.
 *
 * @param id name of the form
 * @param prefix matches at the beginning of a line; its groups {@code seconds}, {@code clock},
 *     {@code host}, {@code process}, {@code pid}, {@code level}, {@code facility}, {@code pri} and
 *     {@code context} are kept
 * @param record whether it begins a record of a log device: seconds count microseconds, the text
 *     writes bytes as {@code \\xNN}, and further lines {@code KEY=value} after a blank belong to it
 * @param seen texts that it must match
 */
public record LineForm(String id, Pattern prefix, boolean record, List<String> seen) {
  public LineForm {
    seen = List.copyOf(seen);
  }
}
