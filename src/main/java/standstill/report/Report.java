package standstill.report;

import java.util.List;
import java.util.Optional;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.machine.Machine;
import standstill.match.SeenTrail;
import standstill.rank.Ranking;
import standstill.trace.Trace;

/**
 * What the tool says of a text.
 *
 * @param verdict {@code stalled}, {@code unlisted}, {@code no-stall} or {@code not-a-boot-log}
 * @param reason why it is not a boot log; empty otherwise
 * @param log the text as it was read
 * @param diagnosis empty when it is not a boot log
 */
public record Report(String verdict, String reason, BootLog log, Optional<Diagnosis> diagnosis) {
  /** The verdict on a text that is no boot log. */
  public static final String NOT_A_BOOT_LOG = "not-a-boot-log";

  /**
   * The diagnosis of one boot.
   *
   * @param boot the boot that was looked at
   * @param trace how far it came
   * @param ranking causes with probabilities
   * @param trails lines that look bad and are harmless
   * @param unexplained warnings and errors near the stop that nothing explains
   * @param machine what the lines say of the machine
   */
  public record Diagnosis(
      Boot boot,
      Trace trace,
      Ranking ranking,
      List<SeenTrail> trails,
      List<LogLine> unexplained,
      Optional<Machine> machine) {
    public Diagnosis {
      trails = List.copyOf(trails);
      unexplained = List.copyOf(unexplained);
    }
  }
}
