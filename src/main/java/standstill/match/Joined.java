package standstill.match;

import java.util.Map;
import standstill.base.SignForm;
import standstill.log.Boot;

/**
 * A demand of a sign on another line, with the lines that were found for it.
 *
 * @param demand what is asked for
 * @param others the other pattern's lines
 */
record Joined(SignForm.Join demand, SignMatcher.Lines others) {
  /** Whether a line of the sign's own pattern meets it. */
  boolean lets(Hit own, Boot boot) {
    return switch (demand.kind()) {
      case AFTER -> others.hits().anyMatch(o -> o.index() < own.index() && agree(own, o));
      case BEFORE -> others.hits().anyMatch(o -> o.index() > own.index() && agree(own, o));
      case THEN_NOT ->
          showsTheRest(own, boot)
              && others.hits().noneMatch(o -> o.index() > own.index() && agree(own, o));
    };
  }

  /** What is missing below a line says something only where nothing was left out below it. */
  private static boolean showsTheRest(Hit own, Boot boot) {
    return boot.cuts().stream().noneMatch(cut -> cut > own.line());
  }

  /** Groups that both patterns have caught the same. */
  static boolean agree(Hit own, Hit other) {
    for (Map.Entry<String, String> each : own.values().entrySet()) {
      String there = other.values().get(each.getKey());
      if (there != null && !there.equals(each.getValue())) {
        return false;
      }
    }
    return true;
  }
}
