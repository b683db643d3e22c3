package standstill.guide;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * What a person lacks, has skipped and has chosen, and what is known of the system.
 *
 * @param lacks ids of things that the person does not have
 * @param skipped ids of checks and fixes that the person does not want to do
 * @param chosen ids of fixes that the person wants to try although they were not proposed
 * @param walked ids of walks written by hand that the person has gone through or does not want
 * @param hasLog whether a log was read already, or can't be had
 * @param known what is known of the system and the machine
 */
public record Limits(
    Set<String> lacks,
    Set<String> skipped,
    Set<String> chosen,
    Set<String> walked,
    boolean hasLog,
    Known known) {
  public Limits {
    lacks = copy(lacks);
    skipped = copy(skipped);
    chosen = copy(chosen);
    walked = copy(walked);
  }

  /** What a person lacks and has skipped, where nothing is known of the system. */
  public Limits(Set<String> lacks, Set<String> skipped, boolean hasLog) {
    this(lacks, skipped, Set.of(), Set.of(), hasLog, Known.NOTHING);
  }

  private static Set<String> copy(Set<String> set) {
    return Collections.unmodifiableSet(new LinkedHashSet<>(set));
  }

  /** No limits, with or without a log. */
  public static Limits none(boolean hasLog) {
    return new Limits(Set.of(), Set.of(), hasLog);
  }

  /** With one more thing that is not wanted. */
  public Limits skip(String id) {
    Set<String> more = new LinkedHashSet<>(skipped);
    more.add(id);
    return new Limits(lacks, more, chosen, walked, hasLog, known);
  }

  /** With one more repair that the person chose. */
  public Limits choose(String id) {
    Set<String> more = new LinkedHashSet<>(chosen);
    more.add(id);
    return new Limits(lacks, skipped, more, walked, hasLog, known);
  }

  /** With what is known of the system. */
  public Limits knowing(Known system) {
    return new Limits(lacks, skipped, chosen, walked, hasLog, system);
  }
}
