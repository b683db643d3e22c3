package standstill.decode;

import java.util.List;

/**
 * Explains the codes of this trade. Without state, safe to use from many threads.
 *
 * <p>In a line the words around a number say what sort it is, and only those numbers are explained
 * whose sort is known; a code alone gets every reading that its form allows, because {@code 12} is
 * an error, a signal, and two different traps.
 */
public final class Decoder {
  /** Longest line that is looked at; the rest of a longer one is left alone. */
  private static final int LONGEST = 4_000;

  /** In the order in which they may claim a number: those with the narrowest form first. */
  private static final List<Codes> ALL =
      List.of(
          new KernelLevels(),
          new EfiStatus(),
          new BootFiles(),
          new GptTypes(),
          new MachineChecks(),
          new PageFaults(),
          new Exceptions(),
          new WaitStatus(),
          new UnitExits(),
          new Signals(),
          new DeviceNumbers(),
          new Taint(),
          new Ata(),
          new Scsi(),
          new Nvme(),
          new Usb(),
          new Pci(),
          new Acpi(),
          new Errno());

  private Decoder() {}

  /** The codes in a line, in order; none overlaps another. */
  public static List<Meaning> explain(String line) {
    Findings findings =
        new Findings(line.length() > LONGEST ? line.substring(0, LONGEST) : line, false);
    ALL.forEach(codes -> codes.inLine(findings));
    return findings.all();
  }

  /**
   * Every reading of a code that stands alone, such as {@code 0x7f00}, {@code -110}, {@code EIO}.
   */
  public static List<Meaning> explainCode(String code) {
    String text = code.strip();
    if (text.isEmpty() || text.length() > 200) {
      return List.of();
    }
    Findings findings = new Findings(text, true);
    Codes.Number number = Codes.Number.of(text);
    ALL.forEach(codes -> codes.alone(number, findings));
    return findings.all();
  }
}
