package standstill.report;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Given;
import standstill.guide.Look;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.machine.Machine;
import standstill.match.SeenTrail;
import standstill.rank.Cause;
import standstill.rank.Ranking;
import standstill.trace.Trace;

/**
 * What the tool says of a text.
 *
 * @param verdict {@code stalled}, {@code unlisted}, {@code no-stall}, {@code not-a-boot-log} or
 *     {@code not-diagnosed}
 * @param reason why it is not a boot log or not diagnosed, without a full stop; empty otherwise
 * @param log the text as it was read
 * @param diagnosis empty when it is not a boot log or not diagnosed
 */
public record Report(String verdict, String reason, BootLog log, Optional<Diagnosis> diagnosis) {
  /** The verdict on a text that is no boot log. */
  public static final String NOT_A_BOOT_LOG = "not-a-boot-log";

  /** The same where a reader says what their system is like, in words of the base. */
  public Report saying(Base base, Collection<String> words) {
    return words.isEmpty()
        ? this
        : new Report(verdict, reason, log, diagnosis.map(d -> d.saying(base, words)));
  }

  /** The verdict on a boot of a system that the base holds nothing of. */
  public static final String NOT_DIAGNOSED = "not-diagnosed";

  /** What a report without a diagnosis begins with. */
  public String heading() {
    return verdict.equals(NOT_DIAGNOSED) ? "Recognised, not diagnosed" : "Not a boot log";
  }

  /**
   * The diagnosis of one boot.
   *
   * @param boot the boot that was looked at
   * @param whyBoot why that one, when the text has several; empty otherwise
   * @param trace how far it came
   * @param ranking causes with probabilities
   * @param trails lines that look bad and are harmless
   * @param cases what the boot shows of its system: circumstances to their cases
   * @param unexplained warnings and errors near the stop that nothing explains
   * @param look the look that would settle most; empty when none would
   * @param machine what the lines say of the machine
   */
  public record Diagnosis(
      Boot boot,
      String whyBoot,
      Trace trace,
      Ranking ranking,
      List<SeenTrail> trails,
      Map<String, Set<String>> cases,
      List<LogLine> unexplained,
      Optional<Look> look,
      Optional<Machine> machine) {
    public Diagnosis {
      cases = Map.copyOf(cases);
      trails = List.copyOf(trails);
      unexplained = List.copyOf(unexplained);
    }

    private Diagnosis saying(Base base, Collection<String> words) {
      return new Diagnosis(
          boot,
          whyBoot,
          trace,
          ranking,
          trails,
          new Given(cases, Map.of()).saying(base, words).cases(),
          unexplained,
          look,
          machine);
    }

    /**
     * What is known for the repairs of a cause: the system, and the values that its signs caught.
     */
    public Given given(Cause cause) {
      return new Given(cases, Captured.of(cause));
    }

    /** What is known for the repairs of a fault, as far as the ranking holds it. */
    public Given given(Fault fault) {
      return ranking.causes().stream()
          .filter(c -> c.fault().id().equals(fault.id()))
          .findFirst()
          .map(this::given)
          .orElse(new Given(cases, Map.of()));
    }
  }
}
