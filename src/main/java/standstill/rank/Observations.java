package standstill.rank;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Stage;

/**
 * What a person has said so far. Immutable; an answer that is taken back leaves exactly what was
 * there before it, and the order of answers makes no difference to what follows from them.
 *
 * @param stage where the person sees the boot stop, without a log
 * @param symptoms ids of symptoms that the person sees
 * @param answers check id to answer id, or to {@link #UNKNOWN}
 * @param tried ids of fixes that were tried and did not help
 * @param helped ids of fixes that helped for one boot
 * @param foundBy ids of faults in which a walk written by hand ended
 */
public record Observations(
    Optional<Stage> stage,
    Set<String> symptoms,
    Map<String, String> answers,
    Set<String> tried,
    Set<String> helped,
    Set<String> foundBy) {
  /** The answer of somebody who can't tell. */
  public static final String UNKNOWN = "unknown";

  /** Nothing said yet. */
  public static final Observations NONE =
      new Observations(Optional.empty(), Set.of(), Map.of(), Set.of());

  public Observations {
    symptoms = Collections.unmodifiableSet(new LinkedHashSet<>(symptoms));
    answers = Collections.unmodifiableMap(new LinkedHashMap<>(answers));
    tried = Collections.unmodifiableSet(new LinkedHashSet<>(tried));
    helped = Collections.unmodifiableSet(new LinkedHashSet<>(helped));
    foundBy = Collections.unmodifiableSet(new LinkedHashSet<>(foundBy));
  }

  /** Without a repair that helped. */
  public Observations(
      Optional<Stage> stage, Set<String> symptoms, Map<String, String> answers, Set<String> tried) {
    this(stage, symptoms, answers, tried, Set.of(), Set.of());
  }

  /** With one more answer, or another one to the same check. */
  public Observations answer(String check, String answer) {
    Map<String, String> more = new LinkedHashMap<>(answers);
    more.put(check, answer);
    return new Observations(stage, symptoms, more, tried, helped, foundBy);
  }

  /** Without the answer to a check. */
  public Observations takeBack(String check) {
    Map<String, String> fewer = new LinkedHashMap<>(answers);
    fewer.remove(check);
    return new Observations(stage, symptoms, fewer, tried, helped, foundBy);
  }

  /** With a fix that did not help. */
  public Observations didNotHelp(String fix) {
    Set<String> more = new LinkedHashSet<>(tried);
    more.add(fix);
    return new Observations(stage, symptoms, answers, more, helped, foundBy);
  }

  /** With a fix that helped for one boot. */
  public Observations helpedOnce(String fix) {
    Set<String> more = new LinkedHashSet<>(helped);
    more.add(fix);
    return new Observations(stage, symptoms, answers, tried, more, foundBy);
  }

  /** With a fault in which a walk written by hand ended. */
  public Observations found(String fault) {
    Set<String> more = new LinkedHashSet<>(foundBy);
    more.add(fault);
    return new Observations(stage, symptoms, answers, tried, helped, more);
  }

  /** Without that fix. */
  public Observations notTried(String fix) {
    Set<String> fewer = new LinkedHashSet<>(tried);
    fewer.remove(fix);
    return new Observations(stage, symptoms, answers, fewer, helped, foundBy);
  }

  /** With another stage. */
  public Observations at(Stage seen) {
    return new Observations(Optional.of(seen), symptoms, answers, tried, helped, foundBy);
  }

  /** With a symptom. */
  public Observations sees(String symptom) {
    Set<String> more = new LinkedHashSet<>(symptoms);
    more.add(symptom);
    return new Observations(stage, more, answers, tried, helped, foundBy);
  }
}
