package standstill.store;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/**
 * Example logs that the program carries, to try it with. They are invented, and say so in their
 * first line.
 */
public final class Examples {
  /**
   * An example.
   *
   * @param name file name without ending
   * @param title for people
   */
  public record Example(String name, String title) {}

  private static final List<Example> ALL =
      List.of(
          new Example(
              "wrong-root-id", "Boot drops to a shell and asks for a disk that is not there"),
          new Example("no-boot-device", "Firmware finds nothing to start"),
          new Example("missing-kernel", "Boot loader does not find the kernel"),
          new Example("memory-error", "Kernel stops with a machine check"),
          new Example("disk-timeout", "Disk driver runs into time-outs"),
          new Example("emergency-mode", "Services stop in emergency mode"));

  private Examples() {}

  /** All examples. */
  public static List<Example> all() {
    return ALL;
  }

  /** The bytes of an example; empty when there is none of that name. */
  public static Optional<byte[]> read(String name) throws IOException {
    if (ALL.stream().noneMatch(example -> example.name().equals(name))) {
      return Optional.empty();
    }
    try (InputStream in = Examples.class.getResourceAsStream("/examples/" + name + ".log")) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    }
  }
}
