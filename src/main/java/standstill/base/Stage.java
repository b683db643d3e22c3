package standstill.base;

import java.util.Locale;
import java.util.Optional;

/** The stages of a boot, in the order in which a machine goes through them. */
public enum Stage {
  /** The machine's own firmware, until it starts a loader. */
  FIRMWARE,
  /** The boot loader, until it starts the kernel. */
  LOADER,
  /** The kernel's own start: memory, processors, interrupts. */
  KERNEL,
  /** Drivers find devices. */
  DEVICES,
  /** The root file system is looked for and mounted. */
  ROOT,
  /** The first process of the installed system starts services. */
  USERLAND,
  /** A login prompt, a desktop or an installer stands ready. */
  DONE;

  /** The word used in files and on the screen. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The stage with that word. */
  public static Optional<Stage> of(String word) {
    for (Stage stage : values()) {
      if (stage.word().equals(word)) {
        return Optional.of(stage);
      }
    }
    return Optional.empty();
  }

  /** Whether this stage comes later than another. */
  public boolean isAfter(Stage other) {
    return ordinal() > other.ordinal();
  }
}
