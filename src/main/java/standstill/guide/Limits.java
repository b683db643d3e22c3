package standstill.guide;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * What a person lacks, and has skipped.
 *
 * @param lacks ids of things that the person does not have
 * @param skipped ids of checks and fixes that the person does not want to do
 * @param hasLog whether a log was read already, or can't be had
 */
public record Limits(Set<String> lacks, Set<String> skipped, boolean hasLog) {
  public Limits {
    lacks = Collections.unmodifiableSet(new LinkedHashSet<>(lacks));
    skipped = Collections.unmodifiableSet(new LinkedHashSet<>(skipped));
  }

  /** No limits, with or without a log. */
  public static Limits none(boolean hasLog) {
    return new Limits(Set.of(), Set.of(), hasLog);
  }

  /** With one more thing that is not wanted. */
  public Limits skip(String id) {
    Set<String> more = new LinkedHashSet<>(skipped);
    more.add(id);
    return new Limits(lacks, more, hasLog);
  }
}
