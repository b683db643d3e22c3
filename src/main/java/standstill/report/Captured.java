package standstill.report;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import standstill.match.Hit;
import standstill.match.Seen;
import standstill.rank.Cause;
import standstill.rank.Factor;
import standstill.text.Pattern;

/**
 * The values that a cause's signs caught, for its repairs' commands.
 *
 * <p>A log is anybody's text, and what stands in a command gets typed into a shell as root. So a
 * value is taken only if it is of the characters that names of devices, modules, units and files
 * are made of, and only if the log names one: of two disks, a person has to choose.
 */
final class Captured {
  private static final Pattern SAFE = Pattern.known("^[A-Za-z0-9/_][A-Za-z0-9@%_+=:,./-]{0,119}$");

  /** A unit's name; init prints its description at the same place. */
  private static final Pattern UNIT =
      Pattern.known(
          "\\.(?:service|mount|automount|socket|device|swap|target|path|timer|scope|slice)$");

  private Captured() {}

  static Map<String, String> of(Cause cause) {
    Map<String, Set<String>> found = new LinkedHashMap<>();
    for (Factor factor : cause.factors()) {
      for (Seen seen : factor.signs()) {
        if (seen.fault().id().equals(cause.fault().id())) {
          for (Hit hit : seen.hits()) {
            hit.values()
                .forEach(
                    (name, value) -> {
                      if (!name.equals("unit") || UNIT.foundIn(value)) {
                        found.computeIfAbsent(name, k -> new LinkedHashSet<>()).add(value);
                      }
                    });
          }
        }
      }
    }
    Map<String, String> values = new LinkedHashMap<>();
    found.forEach(
        (name, all) -> {
          String value = all.iterator().next();
          if (all.size() == 1 && SAFE.foundIn(value) && !value.contains("..")) {
            values.put(name, value);
          }
        });
    return values;
  }
}
